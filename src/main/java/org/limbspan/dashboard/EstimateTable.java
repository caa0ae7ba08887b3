package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.limbspan.dashboard.LedgerSheet.Estimate;
import org.limbspan.scale.Measured;
import org.limbspan.watch.CycleResult;
import org.limbspan.watch.NightsResult;

/** What all readings say together, beside what is expected. */
final class EstimateTable {

  /** Mean anomalistic month in days, rounded; Meeus, Astronomical Algorithms, ch. 50. */
  private static final String MEAN_MONTH_D = "27.5545";

  /** Mean eccentricity of the lunar orbit, 0.0549; from memory. */
  private static final String MEAN_ECCENTRICITY = "0.0549";

  /** Twice the mean radius of 1737.4 km; IAU Working Group on Cartographic Coordinates, 2015. */
  private static final String MOON_DIAMETER_KM = "3474.8";

  private EstimateTable() {}

  static List<Estimate> of(CycleResult cycle, NightsResult nights) {
    List<Estimate> table = new ArrayList<>();
    add(
        table,
        "monthly swing, observed over computed",
        cycle.swing().slope(),
        cycle.swing().slopeUncertainty(),
        "1",
        "free of the calibration");
    if (cycle.period() != null) {
      add(
          table,
          "anomalistic month, d",
          cycle.period().days(),
          cycle.period().uncertaintyDays(),
          MEAN_MONTH_D + " on average",
          "readings alone, no ephemeris");
    }
    if (cycle.eccentricity() != null) {
      add(
          table,
          "eccentricity of the orbit",
          cycle.eccentricity().value(),
          cycle.eccentricity().uncertainty(),
          MEAN_ECCENTRICITY + " on average",
          "readings alone, no ephemeris");
    }
    if (cycle.moonDiameterKm() != null) {
      add(
          table,
          "diameter of the Moon, km",
          cycle.moonDiameterKm().value(),
          cycle.moonDiameterKm().uncertainty(),
          MOON_DIAMETER_KM,
          "computed distance; as good as the calibration");
    }
    add(
        table,
        "growth within a night, observed over computed",
        nights.summary().slope(),
        nights.summary().slopeUncertainty(),
        "1",
        "free of the calibration");
    add(
        table,
        "distance of the Moon, Earth radii",
        nights.summary().distanceEarthRadii(),
        nights.summary().distanceUncertaintyEarthRadii(),
        "56 to 64",
        "night pairs alone");
    return table;
  }

  private static void add(
      List<Estimate> table,
      String quantity,
      @Nullable Double value,
      @Nullable Double uncertainty,
      String expected,
      String basis) {
    if (value != null && uncertainty != null) {
      String observed = Typeset.pair(new Measured(value, uncertainty));
      table.add(new Estimate(quantity, observed, expected, basis));
    }
  }
}

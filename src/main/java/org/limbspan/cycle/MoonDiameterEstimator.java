package org.limbspan.cycle;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.limbspan.sky.Site;

/**
 * The Moon's true diameter from observed size and computed distance: 2 d sin(s/2), with d the
 * distance from the site and s the size along the reading's axis, flattening by refraction taken
 * off.
 *
 * <p>Mean in the logarithm for each setup by robust generalised least squares, then over setups
 * with the uncertainty of each scale; what all calibrations share is added at the end. The only
 * estimate here that is as good as the calibrations and no better; it depends on computed
 * distances.
 */
public final class MoonDiameterEstimator {

  private MoonDiameterEstimator() {}

  /**
   * The diameter.
   *
   * @param scales setups whose scale was measured; readings of others are left out, for a scale
   *     taken from the prediction says nothing of the Moon
   * @param commonRelativeUncertainty of all scales alike (the same sheet, the same tape)
   * @return empty without a reading of these setups
   */
  public static Optional<MoonDiameter> estimate(
      List<Observation> observations,
      Site site,
      List<SetupScale> scales,
      double commonRelativeUncertainty) {
    return estimate(Series.of(observations, site), scales, commonRelativeUncertainty);
  }

  /** The same over a series. */
  public static Optional<MoonDiameter> estimate(
      Series all, List<SetupScale> scales, double commonRelativeUncertainty) {
    if (!(commonRelativeUncertainty >= 0 && commonRelativeUncertainty < 1)) {
      throw new IllegalArgumentException(
          "commonRelativeUncertainty "
              + commonRelativeUncertainty
              + ": expected 0 or more and below 1");
    }
    Map<Integer, Double> scaleUncertainty = new HashMap<>();
    scales.forEach(scale -> scaleUncertainty.put(scale.setup(), scale.relativeUncertainty()));
    Series series = all.where(o -> scaleUncertainty.containsKey(o.setup()));
    if (series.size() == 0) {
      return Optional.empty();
    }
    return levels(series)
        .map(levels -> combine(series, levels, scaleUncertainty, commonRelativeUncertainty));
  }

  private static Optional<KnownRegression.Levels> levels(Series series) {
    Series past = series.past();
    Optional<KnownRegression> known =
        series
            .memory()
            .diameter
            .of(
                past.observations(),
                () -> KnownRegression.of(rows(past), NightPart.RANDOM, new double[0]));
    return series.hasRest()
        ? known.flatMap(k -> k.with(rows(series.rest()))).map(KnownRegression.Grown::levels)
        : known.map(KnownRegression::levels);
  }

  private static Rows rows(Series series) {
    return Rows.of(
        lnDiameterKm(series), new double[0][], series.stated(), series.nights(), series.setups());
  }

  private static double[] lnDiameterKm(Series series) {
    double[] lnArcmin = series.lnUnrefracted();
    for (int i = 0; i < lnArcmin.length; i++) {
      double radians = Math.toRadians(Math.exp(lnArcmin[i]) / 60);
      double distanceKm = series.get(i).sight().topocentricDistanceKm();
      lnArcmin[i] = Math.log(2 * distanceKm * Math.sin(radians / 2));
    }
    return lnArcmin;
  }

  private static MoonDiameter combine(
      Series series,
      KnownRegression.Levels known,
      Map<Integer, Double> scaleUncertainty,
      double common) {
    double[] levels = known.values().toArray();
    double[] variances = known.variances().toArray();
    List<Integer> setups =
        series.observations().stream().map(Observation::setup).distinct().toList();
    List<MoonDiameter.OfSetup> ofSetups = new ArrayList<>();
    double precision = 0;
    double pull = 0;
    for (int g = 0; g < levels.length; g++) {
      double scale = scaleUncertainty.getOrDefault(setups.get(g), 0.0);
      double variance = variances[g] + scale * scale;
      ofSetups.add(new MoonDiameter.OfSetup(setups.get(g), km(levels[g], variance)));
      precision += 1 / variance;
      pull += levels[g] / variance;
    }
    return new MoonDiameter(
        km(pull / precision, 1 / precision + common * common), ofSetups, series.size());
  }

  private static Estimate km(double ln, double variance) {
    return new Estimate(Math.exp(ln), Math.exp(ln) * Math.sqrt(variance));
  }
}

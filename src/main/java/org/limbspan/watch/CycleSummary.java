package org.limbspan.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.Estimate;
import org.limbspan.cycle.MonthEstimator;
import org.limbspan.cycle.MonthSwing;
import org.limbspan.cycle.MoonDiameter;
import org.limbspan.cycle.MoonDiameterEstimator;
import org.limbspan.cycle.SelfReliantCycle;
import org.limbspan.cycle.Series;
import org.limbspan.cycle.SlopeEstimator;
import org.limbspan.cycle.SwingSlope;
import org.limbspan.sky.Apsis;

/** Puts the monthly cycle into the shape of the answer. */
final class CycleSummary {

  private final RigEvidence evidence;
  private final AsJudged asJudged;
  private final SwingSlope slope;
  private final Optional<Estimate> moonDiameter;
  private final List<MonthSwing> months;

  /** All but what the readings say alone. */
  CycleSummary(RigEvidence evidence, AsJudged asJudged, Series series, List<Apsis> apsides) {
    this.evidence = evidence;
    this.asJudged = asJudged;
    this.slope = SlopeEstimator.estimate(series);
    this.moonDiameter = moonDiameter(series);
    this.months = MonthEstimator.estimate(series, apsides);
  }

  CycleResult cycle(Optional<SelfReliantCycle> selfReliant) {
    return new CycleResult(
        asJudged.observations().size(),
        swing(slope),
        selfReliant.map(SelfReliantCycle::periodDays).map(CycleSummary::period).orElse(null),
        selfReliant.map(SelfReliantCycle::eccentricity).map(CycleSummary::quantity).orElse(null),
        moonDiameter.map(CycleSummary::quantity).orElse(null),
        months.stream().map(CycleSummary::month).toList(),
        remarks());
  }

  private Optional<Estimate> moonDiameter(Series series) {
    return MoonDiameterEstimator.estimate(
            series, asJudged.scales(), evidence.commonScaleUncertainty())
        .map(MoonDiameter::diameterKm);
  }

  private static CycleResult.Period period(Estimate days) {
    return new CycleResult.Period(days.value(), days.uncertainty());
  }

  private static CycleResult.Quantity quantity(Estimate estimate) {
    return new CycleResult.Quantity(estimate.value(), estimate.uncertainty());
  }

  private static CycleResult.Swing swing(SwingSlope slope) {
    @Nullable Estimate estimate = slope.slope().orElse(null);
    return new CycleResult.Swing(
        estimate == null ? null : estimate.value(),
        estimate == null ? null : estimate.uncertainty(),
        slope.verdict().label());
  }

  private static CycleResult.Month month(MonthSwing month) {
    @Nullable Estimate swing = month.observedSwingPercent().orElse(null);
    return new CycleResult.Month(
        month.perigeeAt(),
        month.apogeeAt(),
        month.nextPerigeeAt(),
        month.readingCount(),
        swing == null ? null : swing.value(),
        swing == null ? null : swing.uncertainty(),
        month.predictedSwingPercent(),
        month.verdict().label());
  }

  private List<String> remarks() {
    List<String> remarks = new ArrayList<>(asJudged.remarks());
    for (int setup : evidence.inferredScales()) {
      remarks.add(
          "The "
              + ordinal(setup + 1)
              + " setup has no calibration: its scale is taken from the computed Moon and is not"
              + " independent of it. Swing and ratio do not depend on the scale.");
    }
    return remarks;
  }

  private static String ordinal(int place) {
    boolean teen = place % 100 / 10 == 1;
    return place
        + switch (teen ? 0 : place % 10) {
          case 1 -> "st";
          case 2 -> "nd";
          case 3 -> "rd";
          default -> "th";
        };
  }
}

package org.limbspan.watch;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.limbspan.cycle.Hypothesis;
import org.limbspan.cycle.HypothesisComparison;
import org.limbspan.cycle.HypothesisEstimator;
import org.limbspan.cycle.NearMoon;
import org.limbspan.cycle.NearMoonAssumptions;
import org.limbspan.cycle.Series;
import org.limbspan.sky.Site;

/** Puts the comparison of the hypotheses into the shape of the answer. */
final class HypothesesSummary {

  private HypothesesSummary() {}

  static HypothesesResult of(Series series, Site site) {
    List<HypothesisComparison> all =
        HypothesisEstimator.compare(series, site, NearMoonAssumptions.ALL);
    HypothesisComparison usual =
        all.get(NearMoonAssumptions.ALL.indexOf(NearMoonAssumptions.USUAL));
    if (usual.readingCount() == 0) {
      return new HypothesesResult(List.of(), null, List.of(), remarks());
    }
    return new HypothesesResult(
        Stream.of(usual.orbitingMoon(), usual.nearMoon())
            .map(HypothesesSummary::hypothesis)
            .toList(),
        usual.log10BayesFactor(),
        all.stream().map(HypothesesSummary::sensitivity).toList(),
        remarks());
  }

  private static HypothesesResult.Sensitivity sensitivity(HypothesisComparison comparison) {
    NearMoonAssumptions assumptions = comparison.assumptions();
    return new HypothesesResult.Sensitivity(
        assumptions.height().name().toLowerCase(Locale.ROOT),
        assumptions.monthlyChange().name().toLowerCase(Locale.ROOT),
        comparison.log10BayesFactor());
  }

  private static HypothesesResult.Hypothesis hypothesis(Hypothesis hypothesis) {
    return new HypothesesResult.Hypothesis(
        hypothesis.name().label(), hypothesis.logLikelihood(), hypothesis.logEvidence());
  }

  private static List<String> remarks() {
    return List.of(
        "The plate scale of every setup is free under both hypotheses.",
        "The near Moon stands %.0f km (3000 statute miles, common practice, no source) above a flat"
                .formatted(NearMoon.HEIGHT_KM)
            + " ground, and may change its size within the month by any power of the computed"
            + " change: the exponent normal about 0 with standard deviation 1.");
  }
}

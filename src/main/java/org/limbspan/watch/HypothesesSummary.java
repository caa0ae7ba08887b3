package org.limbspan.watch;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.limbspan.cycle.Hypothesis;
import org.limbspan.cycle.HypothesisComparison;
import org.limbspan.cycle.HypothesisEstimator;
import org.limbspan.cycle.NearMoon;
import org.limbspan.cycle.NearMoonAssumptions;
import org.limbspan.cycle.Observation;
import org.limbspan.sky.Site;

/** Puts the comparison of the hypotheses into the shape of the answer. */
final class HypothesesSummary {

  private HypothesesSummary() {}

  static HypothesesResult of(List<Observation> observations, Site site) {
    HypothesisComparison comparison =
        HypothesisEstimator.compare(observations, site, NearMoonAssumptions.USUAL);
    if (comparison.readingCount() == 0) {
      return new HypothesesResult(List.of(), null, List.of(), remarks());
    }
    return new HypothesesResult(
        Stream.of(comparison.orbitingMoon(), comparison.nearMoon())
            .map(HypothesesSummary::hypothesis)
            .toList(),
        comparison.log10BayesFactor(),
        sensitivity(observations, site),
        remarks());
  }

  private static List<HypothesesResult.Sensitivity> sensitivity(
      List<Observation> observations, Site site) {
    return Arrays.stream(NearMoonAssumptions.Height.values())
        .flatMap(
            height ->
                Arrays.stream(NearMoonAssumptions.MonthlyChange.values())
                    .map(change -> new NearMoonAssumptions(height, change)))
        .map(
            assumptions ->
                new HypothesesResult.Sensitivity(
                    assumptions.height().name().toLowerCase(Locale.ROOT),
                    assumptions.monthlyChange().name().toLowerCase(Locale.ROOT),
                    HypothesisEstimator.compare(observations, site, assumptions)
                        .log10BayesFactor()))
        .toList();
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

package org.limbspan.cycle;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.limbspan.sky.Site;

/**
 * The orbiting Moon against the near Moon, by the likelihood of the readings.
 *
 * <p>Both have the same noise model and the same priors for it ({@link PassLikelihood}), and a free
 * scale for each setup: only relative sizes speak. The orbiting Moon predicts all of them, from the
 * computed distances; the near Moon predicts those of a night from {@link NearMoon}, those of the
 * month as {@link NearMoonAssumptions} says. A free height is integrated over ({@link
 * NearMoonEvidence}). Refraction flattens the disc alike under both.
 */
public final class HypothesisEstimator {

  private final Series series;
  private final Site site;
  private final PassLikelihood likelihood;

  private HypothesisEstimator(Series series, Site site) {
    this.series = series;
    this.site = site;
    this.likelihood = PassLikelihood.of(series);
  }

  /** Compares the two over {@code observations} of one rig, in any order. */
  public static HypothesisComparison compare(
      List<Observation> observations, Site site, NearMoonAssumptions assumptions) {
    return compare(observations, site, List.of(assumptions)).get(0);
  }

  /** The same for several assumptions, in their order, at less than the price of each alone. */
  public static List<HypothesisComparison> compare(
      List<Observation> observations, Site site, List<NearMoonAssumptions> assumptions) {
    return compare(Series.of(observations, site), site, assumptions);
  }

  /** The same over a series. */
  public static List<HypothesisComparison> compare(
      Series series, Site site, List<NearMoonAssumptions> assumptions) {
    if (series.size() == 0) {
      return assumptions.stream().map(HypothesisEstimator::untold).toList();
    }
    HypothesisEstimator estimator = new HypothesisEstimator(series, site);
    Hypothesis orbiting = estimator.orbiting();
    return assumptions.stream().map(each -> estimator.compared(orbiting, each)).toList();
  }

  private HypothesisComparison compared(Hypothesis orbiting, NearMoonAssumptions assumptions) {
    Hypothesis near = near(assumptions);
    return new HypothesisComparison(
        orbiting,
        near,
        assumptions,
        (orbiting.logEvidence() - near.logEvidence()) / Math.log(10),
        series.size());
  }

  private static HypothesisComparison untold(NearMoonAssumptions assumptions) {
    return new HypothesisComparison(
        untold(Hypothesis.Name.ORBITING_MOON),
        untold(Hypothesis.Name.NEAR_MOON),
        assumptions,
        0,
        0);
  }

  private static Hypothesis untold(Hypothesis.Name name) {
    return new Hypothesis(name, 0, 0, 1, Optional.empty(), OptionalDouble.empty());
  }

  private Hypothesis orbiting() {
    double[] y = series.lnObserved();
    double[] predicted = series.lnPredicted();
    for (int i = 0; i < y.length; i++) {
      y[i] -= predicted[i];
    }
    PassLikelihood.Outcome outcome = likelihood.evaluate(y);
    return new Hypothesis(
        Hypothesis.Name.ORBITING_MOON,
        outcome.logLikelihood(),
        outcome.logEvidence(),
        outcome.factor(),
        outcome.coefficient(),
        OptionalDouble.empty());
  }

  private Hypothesis near(NearMoonAssumptions assumptions) {
    NearMoonEvidence evidence =
        new NearMoonEvidence(series, site, assumptions.monthlyChange(), likelihood);
    NearMoonEvidence.AtHeight near =
        switch (assumptions.height()) {
          case FIXED -> evidence.at(NearMoon.HEIGHT_KM);
          case FREE -> evidence.atAnyHeight();
        };
    return new Hypothesis(
        Hypothesis.Name.NEAR_MOON,
        near.outcome().logLikelihood(),
        near.logEvidence(),
        near.outcome().factor(),
        near.outcome().coefficient(),
        OptionalDouble.of(near.heightKm()));
  }
}

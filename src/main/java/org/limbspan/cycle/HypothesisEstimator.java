package org.limbspan.cycle;

import java.util.ArrayList;
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

  private HypothesisEstimator(Series series, Site site, PassLikelihood likelihood) {
    this.series = series;
    this.site = site;
    this.likelihood = likelihood;
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
    if (series.hasRest()) {
      return grown(series, site, assumptions);
    }
    HypothesisEstimator estimator =
        new HypothesisEstimator(series, site, PassLikelihood.of(series));
    Hypothesis orbiting = orbiting(estimator.likelihood.evaluate(estimator.overOrbiting()));
    return assumptions.stream()
        .map(each -> compared(orbiting, near(estimator.atHeight(each)), each, series.size()))
        .toList();
  }

  /**
   * What the settled past says.
   *
   * @param near one for each of the assumptions
   */
  record Known(double typicalStated, KnownLikelihood orbiting, List<NearMoonEvidence.Known> near) {}

  private static List<HypothesisComparison> grown(
      Series series, Site site, List<NearMoonAssumptions> assumptions) {
    Series past = series.past();
    Known known =
        series
            .memory()
            .hypotheses
            .of(
                new CycleMemory.Key(past.observations(), site, assumptions),
                () -> known(past, site, assumptions));
    Series rest = series.rest();
    HypothesisEstimator estimator =
        new HypothesisEstimator(rest, site, PassLikelihood.of(rest, known.typicalStated()));
    Hypothesis orbiting =
        orbiting(estimator.likelihood.evaluate(estimator.overOrbiting(), known.orbiting()));
    List<HypothesisComparison> all = new ArrayList<>();
    for (int k = 0; k < assumptions.size(); k++) {
      NearMoonEvidence.AtHeight near =
          estimator.evidence(assumptions.get(k)).with(known.near().get(k));
      all.add(compared(orbiting, near(near), assumptions.get(k), series.size()));
    }
    return all;
  }

  private static Known known(Series past, Site site, List<NearMoonAssumptions> assumptions) {
    HypothesisEstimator estimator = new HypothesisEstimator(past, site, PassLikelihood.of(past));
    return new Known(
        past.typicalStated(),
        estimator.likelihood.know(estimator.overOrbiting()),
        assumptions.stream().map(estimator::knownAtHeight).toList());
  }

  private static HypothesisComparison compared(
      Hypothesis orbiting, Hypothesis near, NearMoonAssumptions assumptions, int readingCount) {
    return new HypothesisComparison(
        orbiting,
        near,
        assumptions,
        (orbiting.logEvidence() - near.logEvidence()) / Math.log(10),
        readingCount);
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

  /** Sizes over those of the orbiting Moon. */
  private double[] overOrbiting() {
    double[] y = series.lnObserved();
    double[] predicted = series.lnPredicted();
    for (int i = 0; i < y.length; i++) {
      y[i] -= predicted[i];
    }
    return y;
  }

  private static Hypothesis orbiting(PassLikelihood.Outcome outcome) {
    return new Hypothesis(
        Hypothesis.Name.ORBITING_MOON,
        outcome.logLikelihood(),
        outcome.logEvidence(),
        outcome.factor(),
        outcome.coefficient(),
        OptionalDouble.empty());
  }

  private NearMoonEvidence evidence(NearMoonAssumptions assumptions) {
    return new NearMoonEvidence(series, site, assumptions.monthlyChange(), likelihood);
  }

  private NearMoonEvidence.AtHeight atHeight(NearMoonAssumptions assumptions) {
    return switch (assumptions.height()) {
      case FIXED -> evidence(assumptions).at(NearMoon.HEIGHT_KM);
      case FREE -> evidence(assumptions).atAnyHeight();
    };
  }

  private NearMoonEvidence.Known knownAtHeight(NearMoonAssumptions assumptions) {
    return switch (assumptions.height()) {
      case FIXED -> evidence(assumptions).knownAt(NearMoon.HEIGHT_KM);
      case FREE -> evidence(assumptions).knownAtAnyHeight();
    };
  }

  private static Hypothesis near(NearMoonEvidence.AtHeight near) {
    return new Hypothesis(
        Hypothesis.Name.NEAR_MOON,
        near.outcome().logLikelihood(),
        near.logEvidence(),
        near.outcome().factor(),
        near.outcome().coefficient(),
        OptionalDouble.of(near.heightKm()));
  }
}

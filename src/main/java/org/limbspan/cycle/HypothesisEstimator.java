package org.limbspan.cycle;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.limbspan.sky.Site;

/**
 * The orbiting Moon against the near Moon, by the likelihood of the readings.
 *
 * <p>Both have the same noise model and the same priors for it ({@link PassLikelihood}), and a free
 * scale for each setup: only relative sizes speak. The orbiting Moon predicts all of them, from the
 * computed distances; the near Moon predicts those of a night from {@link NearMoon}, those of the
 * month as {@link NearMoonAssumptions} says. A free height is integrated over by Gauss and Legendre
 * about its peak. Refraction flattens the disc alike under both.
 */
public final class HypothesisEstimator {

  private static final double LEAST_HEIGHT_KM = 1000;
  private static final double MOST_HEIGHT_KM = 20_000;
  private static final double WIDTH = Math.log(MOST_HEIGHT_KM / LEAST_HEIGHT_KM);
  private static final int SCAN = 12;
  private static final int POINTS = 24;
  private static final double REACH = 8;

  private final Series series;
  private final Site site;
  private final NearMoonAssumptions assumptions;

  private HypothesisEstimator(Series series, Site site, NearMoonAssumptions assumptions) {
    this.series = series;
    this.site = site;
    this.assumptions = assumptions;
  }

  /** Compares the two over {@code observations} of one rig, in any order. */
  public static HypothesisComparison compare(
      List<Observation> observations, Site site, NearMoonAssumptions assumptions) {
    Series series = Series.of(observations, site);
    if (series.size() == 0) {
      return new HypothesisComparison(
          untold(Hypothesis.Name.ORBITING_MOON),
          untold(Hypothesis.Name.NEAR_MOON),
          assumptions,
          0,
          0);
    }
    HypothesisEstimator estimator = new HypothesisEstimator(series, site, assumptions);
    Hypothesis orbiting = estimator.orbiting();
    Hypothesis near =
        switch (assumptions.height()) {
          case FIXED -> estimator.near(NearMoon.HEIGHT_KM);
          case FREE -> estimator.nearAtAnyHeight();
        };
    return new HypothesisComparison(
        orbiting,
        near,
        assumptions,
        (orbiting.logEvidence() - near.logEvidence()) / Math.log(10),
        series.size());
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
    PassLikelihood.Outcome outcome = outcome(y, new double[0][]);
    return new Hypothesis(
        Hypothesis.Name.ORBITING_MOON,
        outcome.logLikelihood(),
        outcome.logEvidence(),
        outcome.factor(),
        outcome.coefficient(),
        OptionalDouble.empty());
  }

  private Hypothesis near(double heightKm) {
    double[] y = series.lnUnrefracted();
    double[] month = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      y[i] += Math.log(NearMoon.distanceKm(series.get(i).sight(), site, heightKm));
      month[i] = -Math.log(series.get(i).sight().geocentricDistanceKm());
    }
    double[][] columns =
        switch (assumptions.monthlyChange()) {
          case NONE -> new double[0][];
          case FREE -> new double[][] {month};
        };
    PassLikelihood.Outcome outcome = outcome(y, columns);
    return new Hypothesis(
        Hypothesis.Name.NEAR_MOON,
        outcome.logLikelihood(),
        outcome.logEvidence(),
        outcome.factor(),
        outcome.coefficient(),
        OptionalDouble.of(heightKm));
  }

  private PassLikelihood.Outcome outcome(double[] y, double[][] columns) {
    double[] priorPrecision = new double[columns.length];
    Arrays.fill(priorPrecision, 1);
    return new PassLikelihood(
            new Rows(y, columns, priorPrecision, series.stated(), series.nights(), series.setups()))
        .evaluate();
  }

  private Hypothesis nearAtAnyHeight() {
    double peak = peakLogHeight();
    Hypothesis best = near(Math.exp(peak));
    double reach = REACH * spread(peak, best.logEvidence());
    GaussIntegrator rule =
        new GaussIntegratorFactory()
            .legendre(
                POINTS,
                Math.max(Math.log(LEAST_HEIGHT_KM), peak - reach),
                Math.min(Math.log(MOST_HEIGHT_KM), peak + reach));
    double relative =
        rule.integrate(log -> Math.exp(near(Math.exp(log)).logEvidence() - best.logEvidence()));
    return new Hypothesis(
        best.name(),
        best.logLikelihood(),
        best.logEvidence() + Math.log(relative / WIDTH),
        best.statedFactor(),
        best.monthlyExponent(),
        best.heightKm());
  }

  private double peakLogHeight() {
    double step = WIDTH / SCAN;
    double best = Math.log(LEAST_HEIGHT_KM);
    double most = Double.NEGATIVE_INFINITY;
    for (int k = 0; k <= SCAN; k++) {
      double log = Math.log(LEAST_HEIGHT_KM) + k * step;
      double value = near(Math.exp(log)).logEvidence();
      if (value > most) {
        most = value;
        best = log;
      }
    }
    return new BrentOptimizer(1e-7, 1e-6)
        .optimize(
            new MaxEval(100),
            new UnivariateObjectiveFunction(log -> near(Math.exp(log)).logEvidence()),
            GoalType.MAXIMIZE,
            new SearchInterval(
                Math.max(Math.log(LEAST_HEIGHT_KM), best - step),
                Math.min(Math.log(MOST_HEIGHT_KM), best + step),
                best))
        .getPoint();
  }

  /** Distance from the peak at which the evidence has fallen by half a unit, by doubling. */
  private double spread(double peak, double top) {
    double step = 1e-5;
    while (step < WIDTH && fall(peak, top, step) < 0.5) {
      step *= 2;
    }
    return step;
  }

  private double fall(double peak, double top, double step) {
    double log = peak + step < Math.log(MOST_HEIGHT_KM) ? peak + step : peak - step;
    return top - near(Math.exp(log)).logEvidence();
  }
}

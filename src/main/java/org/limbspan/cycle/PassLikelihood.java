package org.limbspan.cycle;

import java.util.Optional;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.hipparchus.special.Gamma;

/**
 * Likelihood and evidence of a model whose readings of one pass are one draw of a multivariate
 * Student's t.
 *
 * <p>Four degrees of freedom, scale matrix k^2 (diag(u^2) + (u/2)^2 J): u stated, k one factor for
 * all, J what a night does to all its readings, taken as half a reading's own part. A slip makes
 * its own pass unlikely under every hypothesis and decides nothing; readings of one night are not
 * counted as independent.
 *
 * <p>Priors: ln k Cauchy about 0 of scale 0.3; each setup's level uniform over a factor of 10; a
 * coefficient, where the model has one, normal about 0 with variance 1. Evidence by Laplace's
 * method about the maximum with the expected information of the t distribution (K. L. Lange, R. J.
 * A. Little and J. M. G. Taylor, J. Am. Stat. Assoc. 84, 881, 1989), good to 0.3 in the logarithm
 * from a dozen readings on.
 */
final class PassLikelihood {

  private static final double DEGREES = 4;
  private static final double NIGHT_SHARE = 0.5;
  private static final double FACTOR_SCALE = 0.3;
  private static final double LEVEL_WIDTH = Math.log(10);
  private static final int MAX_ROUNDS = 100;
  private static final double SETTLED = 1e-6;

  private final Rows rows;
  private final int[] sizes;
  private final double nightSd;
  private final Whitening plain;

  PassLikelihood(Rows rows) {
    this.rows = rows;
    this.sizes = rows.nights().sizes();
    this.nightSd = NIGHT_SHARE * rows.typicalStated();
    this.plain = weighted(OutlierWeights.ones(sizes.length), 1);
  }

  /**
   * The best of a model and its weight.
   *
   * @param logLikelihood at the best levels, coefficient and factor
   * @param logEvidence with all of them integrated out
   * @param coefficient of the column, where there is one
   */
  record Outcome(
      double logLikelihood, double logEvidence, double factor, Optional<Estimate> coefficient) {}

  Outcome evaluate() {
    double[] rest = rows.without(rows.levels().medians(rows.y()), rows.y());
    double[] squares = squares(rest);
    double logFactor = bestLogFactor(squares);
    double log = logPosterior(squares, logFactor);
    double coefficient = 0;
    for (int round = 0; round < MAX_ROUNDS; round++) {
      double before = log;
      Whitening whitening = weighted(weights(squares, logFactor), Math.exp(logFactor));
      coefficient =
          new NormalEquations(whitening, rows)
              .solve(1)
              .map(s -> rows.columnCount() == 0 ? 0 : s.coefficients().getEntry(0))
              .orElse(0.0);
      rest = unexplained(coefficient);
      squares = squares(rows.without(whitening.intercepts(rest), rest));
      logFactor = bestLogFactor(squares);
      log = logPosterior(squares, logFactor) + logCoefficientPrior(coefficient);
      if (Math.abs(log - before) < SETTLED) {
        break;
      }
    }
    return outcome(squares, logFactor, coefficient);
  }

  private double[] unexplained(double coefficient) {
    return rows.columnCount() == 0 ? rows.y() : rows.unexplained(new double[] {coefficient});
  }

  private Outcome outcome(double[] squares, double logFactor, double coefficient) {
    double[] information = new double[sizes.length];
    double factorInformation = 0;
    for (int b = 0; b < sizes.length; b++) {
      double both = DEGREES + sizes[b];
      information[b] = both / (both + 2);
      factorInformation += 2 * sizes[b] * DEGREES / (both + 2);
    }
    factorInformation = Math.max(1, factorInformation + priorInformation(logFactor));
    Whitening whitening = weighted(information, Math.exp(logFactor));
    double logInformation = whitening.logLevelInformation() + Math.log(factorInformation);
    Optional<Estimate> estimate = Optional.empty();
    if (rows.columnCount() > 0) {
      double variance =
          new NormalEquations(whitening, rows)
              .solve(1)
              .map(s -> s.covariance().getEntry(0, 0))
              .orElse(1.0);
      logInformation -= Math.log(variance);
      estimate = Optional.of(new Estimate(coefficient, Math.sqrt(variance)));
    }
    int integrated = rows.levels().count() + rows.columnCount() + 1;
    double logEvidence =
        logPosterior(squares, logFactor)
            + logCoefficientPrior(coefficient)
            - rows.levels().count() * Math.log(LEVEL_WIDTH)
            + (integrated * Math.log(2 * Math.PI) - logInformation) / 2;
    return new Outcome(
        logLikelihood(squares, logFactor), logEvidence, Math.exp(logFactor), estimate);
  }

  private double[] squares(double[] residuals) {
    double[] z = plain.decorrelated(residuals);
    for (int i = 0; i < z.length; i++) {
      z[i] *= z[i];
    }
    return rows.nights().sums(z);
  }

  private double[] weights(double[] squares, double logFactor) {
    double precision = Math.exp(-2 * logFactor);
    double[] weights = new double[squares.length];
    for (int b = 0; b < weights.length; b++) {
      weights[b] = (DEGREES + sizes[b]) / (DEGREES + squares[b] * precision);
    }
    return weights;
  }

  private Whitening weighted(double[] weights, double factor) {
    double[] root = rows.sd(factor);
    for (int i = 0; i < root.length; i++) {
      root[i] = Math.sqrt(weights[rows.nights().of(i)]) / root[i];
    }
    double[] sd = new double[weights.length];
    for (int b = 0; b < sd.length; b++) {
      sd[b] = nightSd * factor / Math.sqrt(weights[b]);
    }
    return new Whitening(root, rows.nights(), sd, rows.levels());
  }

  private double bestLogFactor(double[] squares) {
    return new BrentOptimizer(1e-8, 1e-7)
        .optimize(
            new MaxEval(200),
            new UnivariateObjectiveFunction(log -> logPosterior(squares, log)),
            GoalType.MAXIMIZE,
            new SearchInterval(Math.log(0.05), Math.log(5000)))
        .getPoint();
  }

  private double logPosterior(double[] squares, double logFactor) {
    double deviation = logFactor / FACTOR_SCALE;
    return logLikelihood(squares, logFactor)
        - Math.log1p(deviation * deviation)
        - Math.log(Math.PI * FACTOR_SCALE);
  }

  /** Curvature of the Cauchy prior of the factor, its sign turned. */
  private static double priorInformation(double logFactor) {
    double square = Math.pow(logFactor / FACTOR_SCALE, 2);
    return 2 * (1 - square) / Math.pow(FACTOR_SCALE * (1 + square), 2);
  }

  private double logLikelihood(double[] squares, double logFactor) {
    double precision = Math.exp(-2 * logFactor);
    double log = -plain.logCovariance() / 2 - rows.size() * logFactor;
    for (int b = 0; b < squares.length; b++) {
      double both = (DEGREES + sizes[b]) / 2;
      log +=
          Gamma.logGamma(both)
              - Gamma.logGamma(DEGREES / 2)
              - sizes[b] * Math.log(DEGREES * Math.PI) / 2
              - both * Math.log1p(squares[b] * precision / DEGREES);
    }
    return log;
  }

  private double logCoefficientPrior(double coefficient) {
    return rows.columnCount() == 0 ? 0 : -(coefficient * coefficient + Math.log(2 * Math.PI)) / 2;
  }
}

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
  private static final double LEAST_LOG_FACTOR = Math.log(0.05);
  private static final double MOST_LOG_FACTOR = Math.log(5000);

  /** Half the width of a search about a factor that is nearly known, in the logarithm. */
  private static final double NEAR = 0.1;

  private static final int MAX_ROUNDS = 100;
  private static final double SETTLED = 1e-6;

  private final Rows rows;
  private final int[] sizes;
  private final double nightSd;
  private final Whitening plain;
  private final double logConstant;

  PassLikelihood(Rows rows) {
    this.rows = rows;
    this.sizes = rows.nights().sizes();
    this.nightSd = NIGHT_SHARE * rows.typicalStated();
    this.plain = weighted(OutlierWeights.ones(sizes.length), 1);
    this.logConstant = logConstant(sizes) - plain.logCovariance() / 2;
  }

  /** The same readings with other values to explain. */
  private PassLikelihood(Rows rows, PassLikelihood other) {
    this.rows = rows;
    this.sizes = other.sizes;
    this.nightSd = other.nightSd;
    this.plain = other.plain;
    this.logConstant = other.logConstant;
  }

  /** Of the readings of {@code series}, nothing to explain yet. */
  static PassLikelihood of(Series series) {
    return new PassLikelihood(
        Rows.of(
            new double[series.size()],
            new double[0][],
            series.stated(),
            series.nights(),
            series.setups()));
  }

  /** The same readings with other values and columns to explain them. */
  PassLikelihood explaining(double[] y, double[][] columns, double[] priorPrecision) {
    return new PassLikelihood(rows.explaining(y, columns, priorPrecision), this);
  }

  private static double logConstant(int[] sizes) {
    double log = 0;
    for (int size : sizes) {
      log +=
          Gamma.logGamma((DEGREES + size) / 2)
              - Gamma.logGamma(DEGREES / 2)
              - size * Math.log(DEGREES * Math.PI) / 2;
    }
    return log;
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
    double logFactor = bestLogFactor(squares, LEAST_LOG_FACTOR, MOST_LOG_FACTOR);
    double log = logPosterior(squares, logFactor);
    double coefficient = 0;
    for (int round = 0; round < MAX_ROUNDS; round++) {
      double before = log;
      Whitening whitening = weighted(weights(squares, logFactor), Math.exp(logFactor));
      coefficient = rows.columnCount() == 0 ? 0 : coefficient(whitening);
      rest = unexplained(coefficient);
      squares = squares(rows.without(whitening.intercepts(rest), rest));
      logFactor = bestLogFactor(squares, logFactor);
      log = logPosterior(squares, logFactor) + logCoefficientPrior(coefficient);
      if (Math.abs(log - before) < SETTLED) {
        break;
      }
    }
    return outcome(squares, logFactor, coefficient);
  }

  private double coefficient(Whitening whitening) {
    return new NormalEquations(whitening, rows)
        .solve(1)
        .map(s -> s.coefficients().getEntry(0))
        .orElse(0.0);
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

  /** The best near {@code start}, or anywhere if it is not near. */
  private double bestLogFactor(double[] squares, double start) {
    double best = bestLogFactor(squares, start - NEAR, start + NEAR);
    return Math.abs(best - start) < 0.9 * NEAR
        ? best
        : bestLogFactor(squares, LEAST_LOG_FACTOR, MOST_LOG_FACTOR);
  }

  private double bestLogFactor(double[] squares, double from, double to) {
    return new BrentOptimizer(1e-8, 1e-7)
        .optimize(
            new MaxEval(200),
            new UnivariateObjectiveFunction(log -> logPosterior(squares, log)),
            GoalType.MAXIMIZE,
            new SearchInterval(from, to))
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
    double log = logConstant - rows.size() * logFactor;
    for (int b = 0; b < squares.length; b++) {
      log -= (DEGREES + sizes[b]) / 2 * Math.log1p(squares[b] * precision / DEGREES);
    }
    return log;
  }

  private double logCoefficientPrior(double coefficient) {
    return rows.columnCount() == 0 ? 0 : -(coefficient * coefficient + Math.log(2 * Math.PI)) / 2;
  }
}

package org.limbspan.cycle;

import java.util.Optional;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.stat.descriptive.rank.Median;

/**
 * Linear regression of readings that share nights, levels and now and then a slip.
 *
 * <p>Model: y = columns x coefficients + level of the group + night + own part; night normal, own
 * part a contaminated normal ({@link OutlierWeights}) of stated standard deviation times one
 * factor. Fitted by expectation and maximisation: weights given coefficients and noise, noise given
 * weights ({@link NoiseSearch}), coefficients by generalised least squares.
 *
 * <p>The covariance is that of the last step, widened twice. By 1.04 for the doubt itself: the
 * asymptotic variance of the estimate over that with known weights, E(psi^2) E(w) / (k^2
 * E(psi')^2), by numerical integration over the model with 2 percent slips (P. J. Huber, Robust
 * Statistics, 1981, ch. 3, for the form). By (d + 6) / (d + 4) where the noise comes from d spare
 * rows of the same fit: the variance of Student's t, the prior of the factor counted as six rows.
 */
final class RobustRegression {

  static final int MAX_ROUNDS = 12;
  private static final int ABUNDANT = 100;
  private static final double PRICE_OF_DOUBT = 1.04;
  private static final double PRIOR_ROWS = 6;

  /**
   * Root mean square change of the weights below which they are settled: a coefficient then moves
   * by a hundredth of its uncertainty.
   */
  static final double SETTLED = 0.003;

  private RobustRegression() {}

  /**
   * What came out.
   *
   * @param residuals what coefficients and levels leave of each row
   */
  record Fit(
      RealVector coefficients,
      RealMatrix covariance,
      Noise noise,
      RealVector weights,
      RealVector residuals) {

    private Fit widened(double factor) {
      return coefficients.getDimension() == 0
          ? this
          : new Fit(coefficients, covariance.scalarMultiply(factor), noise, weights, residuals);
    }

    Estimate coefficient(int j) {
      return new Estimate(coefficients.getEntry(j), Math.sqrt(covariance.getEntry(j, j)));
    }
  }

  /**
   * Fits coefficients and noise.
   *
   * @param start coefficients from which the first judgement of outliers is made
   * @return empty where there are too few rows or the columns cannot be told apart
   */
  static Optional<Fit> fit(Rows rows, NightPart part, double[] start) {
    if (rows.spareRows() < 0) {
      return Optional.empty();
    }
    double[] residuals = medianResiduals(rows, start);
    Noise first = new Noise(Math.max(0.3, firstFactor(rows, residuals)), rows.typicalStated() / 2);
    return fit(rows, part, residuals, first, Optional.empty());
  }

  /**
   * Fits coefficients and noise from nearby on.
   *
   * @param near a fit of the same model to some of the rows
   */
  static Optional<Fit> fitNear(Rows rows, NightPart part, double[] start, Noise near) {
    return rows.spareRows() < 0
        ? Optional.empty()
        : fit(rows, part, medianResiduals(rows, start), near, Optional.of(near));
  }

  private static Optional<Fit> fit(
      Rows rows, NightPart part, double[] residuals, Noise first, Optional<Noise> near) {
    return alternate(
            rows,
            part,
            weights(rows, part, first, residuals, OutlierWeights.ones(rows.size())),
            residuals,
            near,
            (weights, rest, before) -> {
              NoiseSearch search = new NoiseSearch(noiseRows(rows, rest), weights);
              return before.isPresent() ? search.find(part, before.get()) : search.find(part);
            })
        .map(fit -> widened(fit, rows.spareRows()));
  }

  /** One step of a fit whose noise is known: outliers judged once, coefficients solved once. */
  static Optional<Fit> step(Rows rows, NightPart part, double[] start, Noise noise) {
    if (rows.spareRows() < 0) {
      return Optional.empty();
    }
    double[] residuals = medianResiduals(rows, start);
    return solve(
        rows, noise, weights(rows, part, noise, residuals, OutlierWeights.ones(rows.size())));
  }

  /** Fits coefficients with the noise known beforehand; outliers are judged anew. */
  static Optional<Fit> fit(Rows rows, NightPart part, double[] start, Noise noise) {
    if (rows.spareRows() < 0) {
      return Optional.empty();
    }
    double[] residuals = medianResiduals(rows, start);
    return alternate(
            rows,
            part,
            weights(rows, part, noise, residuals, OutlierWeights.ones(rows.size())),
            residuals,
            Optional.empty(),
            (weights, rest, before) -> Optional.of(noise))
        .map(fit -> fit.widened(PRICE_OF_DOUBT));
  }

  /** A fit whose noise comes from so many spare rows, widened for that and for the doubt. */
  static Fit widened(Fit fit, int spareRows) {
    return fit.widened(PRICE_OF_DOUBT * price(spareRows));
  }

  private static double price(int spareRows) {
    return (spareRows + PRIOR_ROWS) / (spareRows + PRIOR_ROWS - 2);
  }

  /** Where readings abound, what the coefficients cost in degrees of freedom does not matter. */
  private static Rows noiseRows(Rows rows, double[] residuals) {
    return rows.size() > ABUNDANT * rows.columnCount() ? rows.left(residuals) : rows;
  }

  /** The noise that weights and residuals speak for, given what it was a round before. */
  private interface NoiseGiven {
    Optional<Noise> of(double[] weights, double[] residuals, Optional<Noise> before);
  }

  private static Optional<Fit> alternate(
      Rows rows,
      NightPart part,
      double[] firstWeights,
      double[] firstResiduals,
      Optional<Noise> near,
      NoiseGiven noiseGiven) {
    double[] weights = firstWeights;
    double[] residuals = firstResiduals;
    Optional<Noise> before = near;
    for (int round = 0; ; round++) {
      double[] now = weights;
      Optional<Fit> fit =
          noiseGiven.of(now, residuals, before).flatMap(noise -> solve(rows, noise, now));
      if (fit.isEmpty() || round == MAX_ROUNDS) {
        return fit;
      }
      before = fit.map(Fit::noise);
      residuals = fit.get().residuals().toArray();
      double[] next = weights(rows, part, fit.get().noise(), residuals, now);
      if (change(now, next) < SETTLED) {
        return fit;
      }
      weights = next;
    }
  }

  private static Optional<Fit> solve(Rows rows, Noise noise, double[] weights) {
    double factor = noise.statedFactor();
    NormalEquations equations = new NightSums(rows, weights).equations(noise.nightSd() / factor);
    return equations
        .solve(factor)
        .map(
            s ->
                new Fit(
                    s.coefficients(),
                    s.covariance(),
                    noise,
                    new ArrayRealVector(weights, false),
                    residuals(rows, equations, s.coefficients())));
  }

  private static RealVector residuals(
      Rows rows, NormalEquations equations, RealVector coefficients) {
    double[] rest = rows.unexplained(coefficients.toArray());
    return new ArrayRealVector(rows.without(equations.levels(coefficients), rest), false);
  }

  private static double[] medianResiduals(Rows rows, double[] coefficients) {
    double[] rest = rows.unexplained(coefficients);
    return rows.without(rows.levels().medians(rest), rest);
  }

  /** Scatter over stated scatter from the median of absolute values (0.6745 of a normal's). */
  private static double firstFactor(Rows rows, double[] residuals) {
    double[] sizes = rows.sd(1);
    for (int i = 0; i < sizes.length; i++) {
      sizes[i] = Math.abs(residuals[i]) / sizes[i];
    }
    return new Median().evaluate(sizes) / 0.6745;
  }

  static double[] weights(
      Rows rows, NightPart part, Noise noise, double[] residuals, double[] previous) {
    return OutlierWeights.of(
        residuals, rows.sd(noise.statedFactor()), previous, rows.nights(), part, noise.nightSd());
  }

  static double change(double[] before, double[] after) {
    double squares = 0;
    for (int i = 0; i < before.length; i++) {
      squares += (after[i] - before[i]) * (after[i] - before[i]);
    }
    return Math.sqrt(squares / before.length);
  }
}

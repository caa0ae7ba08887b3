package org.limbspan.cycle;

import java.util.Optional;
import java.util.function.BiFunction;
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
 * weights ({@link NoiseSearch}), coefficients by generalised least squares. The covariance is that
 * of the last step with its weights taken as known.
 */
final class RobustRegression {

  private static final int MAX_ROUNDS = 12;
  private static final int ABUNDANT = 100;
  private static final double SETTLED = 0.01;

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
    return alternate(
        rows,
        part,
        weights(rows, part, first, residuals, OutlierWeights.ones(rows.size())),
        residuals,
        (weights, rest) -> new NoiseSearch(noiseRows(rows, rest), weights).find(part));
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
        (weights, rest) -> Optional.of(noise));
  }

  /** Where readings abound, what the coefficients cost in degrees of freedom does not matter. */
  private static Rows noiseRows(Rows rows, double[] residuals) {
    return rows.size() > ABUNDANT * rows.columnCount() ? rows.left(residuals) : rows;
  }

  private static Optional<Fit> alternate(
      Rows rows,
      NightPart part,
      double[] firstWeights,
      double[] firstResiduals,
      BiFunction<double[], double[], Optional<Noise>> noiseGiven) {
    double[] weights = firstWeights;
    double[] residuals = firstResiduals;
    for (int round = 0; ; round++) {
      double[] now = weights;
      Optional<Fit> fit =
          noiseGiven.apply(now, residuals).flatMap(noise -> solve(rows, noise, now));
      if (fit.isEmpty() || round == MAX_ROUNDS) {
        return fit;
      }
      residuals = fit.get().residuals().toArray();
      double[] next = weights(rows, part, fit.get().noise(), residuals, now);
      if (greatestChange(now, next) < SETTLED) {
        return fit;
      }
      weights = next;
    }
  }

  private static Optional<Fit> solve(Rows rows, Noise noise, double[] weights) {
    Whitening whitening =
        NoiseSearch.whitening(rows, weights, noise.statedFactor(), noise.nightSd());
    return new NormalEquations(whitening, rows)
        .solve(1)
        .map(
            s ->
                new Fit(
                    s.coefficients(),
                    s.covariance(),
                    noise,
                    new ArrayRealVector(weights),
                    residuals(rows, whitening, s.coefficients())));
  }

  private static RealVector residuals(Rows rows, Whitening whitening, RealVector coefficients) {
    double[] rest = rows.unexplained(coefficients.toArray());
    return new ArrayRealVector(rows.without(whitening.intercepts(rest), rest));
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

  private static double[] weights(
      Rows rows, NightPart part, Noise noise, double[] residuals, double[] previous) {
    return OutlierWeights.of(
        residuals, rows.sd(noise.statedFactor()), previous, rows.nights(), part, noise.nightSd());
  }

  private static double greatestChange(double[] before, double[] after) {
    double most = 0;
    for (int i = 0; i < before.length; i++) {
      most = Math.max(most, Math.abs(after[i] - before[i]));
    }
    return most;
  }
}

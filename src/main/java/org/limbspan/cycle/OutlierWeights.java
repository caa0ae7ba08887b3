package org.limbspan.cycle;

import java.util.Arrays;

/**
 * Expectation step for a contaminated normal: a share of 2 % of the readings are slips, scattered
 * five times as widely as the rest and with the long tails of Student's t of three degrees (share
 * and spread common practice, no source). A weight is the expected precision of a reading's own
 * part: near 1 within three standard deviations, below a tenth at four, falling with the square of
 * a gross error.
 */
final class OutlierWeights {

  private static final double SHARE = 0.02;
  private static final double SPREAD = 5;
  private static final double DEGREES = 3;

  /** Density of Student's t of three degrees at 0 over that of a normal of the same scale. */
  private static final double T_AT_ZERO = 0.3675525969478614 * Math.sqrt(2 * Math.PI);

  private static final double SPREAD2 = SPREAD * SPREAD;
  private static final double SLIP_ODDS = SHARE / (1 - SHARE) * T_AT_ZERO;

  private OutlierWeights() {}

  /** No reading doubted. */
  static double[] ones(int size) {
    double[] weights = new double[size];
    Arrays.fill(weights, 1);
    return weights;
  }

  /**
   * First weights: only what lies far outside {@code spread} about its level's median is doubted.
   */
  static double[] ofSpread(Rows rows, double spread) {
    double[] rest = rows.without(rows.levels().medians(rows.y()), rows.y());
    double[] weights = new double[rest.length];
    for (int i = 0; i < rest.length; i++) {
      weights[i] = weight(rest[i], spread * spread, 0);
    }
    return weights;
  }

  /**
   * Each reading is judged against what the others of its night leave over.
   *
   * @param residuals what the fit leaves of each row
   * @param sd standard deviation of each row's own part, outliers aside
   * @param previous weights with which the others of the night speak
   */
  static double[] of(
      double[] residuals,
      double[] sd,
      double[] previous,
      Grouping nights,
      NightPart part,
      double nightSd) {
    int n = residuals.length;
    double[] precision = new double[n];
    double[] pull = new double[n];
    for (int i = 0; i < n; i++) {
      precision[i] = previous[i] / (sd[i] * sd[i]);
      pull[i] = precision[i] * residuals[i];
    }
    double[] precisions = nights.sums(precision);
    double[] pulls = nights.sums(pull);
    double priorPrecision = part == NightPart.ABSORBED ? 0 : 1 / (nightSd * nightSd);
    double[] weights = new double[n];
    for (int i = 0; i < n; i++) {
      double others = Math.max(0, precisions[nights.of(i)] - precision[i]);
      double total = others + priorPrecision;
      if (part == NightPart.ABSORBED && others <= 1e-9 * precision[i]) {
        weights[i] = 1;
        continue;
      }
      double level = (pulls[nights.of(i)] - pull[i]) / total;
      weights[i] = weight(residuals[i] - level, sd[i] * sd[i], 1 / total);
    }
    return weights;
  }

  private static double weight(double deviation, double own, double shared) {
    double variance = own + shared;
    double wide = own * SPREAD2 + shared;
    double far = 1 + deviation * deviation / (wide * DEGREES);
    double odds =
        SLIP_ODDS
            * Math.sqrt(variance / wide)
            * Math.exp(deviation * deviation / (2 * variance))
            / (far * far);
    double regular = 1 / (1 + odds);
    return regular + (1 - regular) * (DEGREES + 1) / (DEGREES * far) / SPREAD2;
  }
}

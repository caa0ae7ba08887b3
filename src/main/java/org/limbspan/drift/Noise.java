package org.limbspan.drift;

/**
 * How readings scatter. Of 1,000 readings some 20 are outliers of about 3 to 8 standard deviations
 * and 2 are blunders of any size; the rest are normal.
 */
final class Noise {

  static final double OUTLIER_SHARE = 0.02;
  static final double BLUNDER_SHARE = 0.002;
  static final double USUAL_SHARE = 1 - OUTLIER_SHARE - BLUNDER_SHARE;

  /** Variance of an outlier over that of a usual reading: 5.7 squared, as of 3 to 8 uniformly. */
  static final double OUTLIER_FACTOR = 32;

  /** Half width of the Cauchy distribution of blunders. */
  static final double BLUNDER_WIDTH = 0.03;

  /** Stated uncertainties of calibrations are taken a little wider. */
  static final double CALIBRATION_FACTOR = 1.3;

  static final double CALIBRATION_FREEDOM = 8;

  /** Half width of the Cauchy distribution of calibrations that went wrong. */
  static final double WRONG_CALIBRATION_WIDTH = 0.01;

  /** The noise is learnt from the last 400 readings or so. */
  static final double LONGEST_SHAPE = 200;

  private static final double LOG_ROOT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

  private Noise() {}

  static double normalDensity(double z2, double variance) {
    return Math.exp(-0.5 * z2 - LOG_ROOT_TWO_PI) / Math.sqrt(variance);
  }

  /**
   * Student's density. The ratio of gamma functions is replaced by its asymptotic series, ln
   * Gamma((v + 1)/2) - ln Gamma(v/2) = ln(v/2)/2 - 1/(4v) + 1/(24v^3) - ..., which is good to 1e-4
   * from v = 4 on.
   */
  static double studentDensity(double z2, double variance, double freedom) {
    double constant = -LOG_ROOT_TWO_PI - 1 / (4 * freedom) + 1 / (24 * freedom * freedom * freedom);
    return Math.exp(constant - 0.5 * (freedom + 1) * Math.log(1 + z2 / freedom))
        / Math.sqrt(variance);
  }

  static double blunderDensity(double error, double variance) {
    double width = BLUNDER_WIDTH + Math.sqrt(variance);
    double ratio = error / width;
    return BLUNDER_SHARE / (Math.PI * width * (1 + ratio * ratio));
  }

  static double wrongCalibrationDensity(double error, double variance) {
    double width = WRONG_CALIBRATION_WIDTH + Math.sqrt(variance);
    double ratio = error / width;
    return 1 / (Math.PI * width * (1 + ratio * ratio));
  }

  /** ln(exp(a) + exp(b)); either may be minus infinity. */
  static double logSum(double a, double b) {
    double larger = Math.max(a, b);
    if (larger == Double.NEGATIVE_INFINITY) {
      return larger;
    }
    return larger + Math.log1p(Math.exp(Math.min(a, b) - larger));
  }
}

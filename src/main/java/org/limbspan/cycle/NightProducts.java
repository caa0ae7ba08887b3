package org.limbspan.cycle;

/**
 * Products of columns within each night, x' V^-1 z, V = diag(u^2) + s^2 J: u stated, s the night
 * part. By the same identity as {@link NightSums}, but night by night and with levels left in.
 */
final class NightProducts {

  private final Grouping nights;
  private final double[] precision;
  private final double[] growth;
  private final double[] shrink;
  private final double[] information;

  NightProducts(Rows rows, double nightSd) {
    nights = rows.nights();
    precision = rows.sd(1);
    for (int i = 0; i < precision.length; i++) {
      precision[i] = 1 / (precision[i] * precision[i]);
    }
    double[] sums = nights.sums(precision);
    growth = new double[sums.length];
    shrink = new double[sums.length];
    information = new double[sums.length];
    for (int b = 0; b < sums.length; b++) {
      growth[b] = 1 + nightSd * nightSd * sums[b];
      shrink[b] = nightSd * nightSd / growth[b];
      information[b] = sums[b] / growth[b];
    }
  }

  /** The products of a column of ones with itself: what a night knows of its level. */
  double[] information() {
    return information.clone();
  }

  /** The products of a column of ones with {@code x}. */
  double[] ofOnes(double[] x) {
    double[] sums = sums(x);
    for (int b = 0; b < sums.length; b++) {
      sums[b] /= growth[b];
    }
    return sums;
  }

  double[] of(double[] x, double[] z) {
    double[] ofX = sums(x);
    double[] ofZ = x == z ? ofX : sums(z);
    double[] products = new double[growth.length];
    for (int i = 0; i < x.length; i++) {
      products[nights.of(i)] += precision[i] * x[i] * z[i];
    }
    for (int b = 0; b < products.length; b++) {
      products[b] -= shrink[b] * ofX[b] * ofZ[b];
    }
    return products;
  }

  private double[] sums(double[] x) {
    double[] sums = new double[growth.length];
    for (int i = 0; i < x.length; i++) {
      sums[nights.of(i)] += precision[i] * x[i];
    }
    return sums;
  }

  /** ln of the determinant of V over all nights. */
  double logCovariance() {
    double log = 0;
    for (double each : growth) {
      log += Math.log(each);
    }
    for (double each : precision) {
      log -= Math.log(each);
    }
    return log;
  }
}

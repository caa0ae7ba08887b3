package org.limbspan.cycle;

import java.util.Arrays;

/**
 * Turns rows with a covariance of blocks into rows of unit, independent variance, and takes out one
 * free intercept per group on the way.
 *
 * <p>The covariance is diag(1/a^2) + s^2 J within a block (compound symmetry: readings that share a
 * night of standard deviation s), nothing between blocks. Its inverse root is closed: z = a (v - b
 * sum(a^2 v)), b = (1 - 1/sqrt(1 + s^2 q))/q, q = sum(a^2). Intercepts are taken out by projection
 * (Frisch and Waugh, Econometrica 1, 387, 1933), which is exact, so that a hundred setups cost no
 * more than one.
 */
final class Whitening {

  private final double[] root;
  private final Grouping blocks;
  private final double[] pull;
  private final Grouping intercepts;
  private final double[] one;
  private final double[] oneNorm2;
  private final double[] growth;

  /**
   * @param root inverse standard deviation of each row's own part
   * @param blocks each of them within one group of {@code intercepts}, which makes the levels'
   *     columns orthogonal
   * @param blockSd standard deviation of the part common to a block
   */
  Whitening(double[] root, Grouping blocks, double blockSd, Grouping intercepts) {
    this.root = root;
    this.blocks = blocks;
    this.intercepts = intercepts;
    double[] squares = product(root, root);
    double[] q = blocks.sums(squares);
    this.pull = new double[q.length];
    this.growth = new double[q.length];
    for (int b = 0; b < q.length; b++) {
      growth[b] = 1 + blockSd * blockSd * q[b];
      pull[b] = (1 - 1 / Math.sqrt(growth[b])) / q[b];
    }
    this.one = decorrelated(same(1, root.length));
    this.oneNorm2 = intercepts.sums(product(one, one));
  }

  /** ln of the determinants of the covariance and of the intercepts' information, summed. */
  double logDeterminant() {
    return logCovariance() + logLevelInformation();
  }

  /** ln of the determinant of the covariance. */
  double logCovariance() {
    double log = 0;
    for (double each : growth) {
      log += Math.log(each);
    }
    for (double each : root) {
      log -= 2 * Math.log(each);
    }
    return log;
  }

  /** ln of the determinant of the levels' information. */
  double logLevelInformation() {
    return Arrays.stream(oneNorm2).map(Math::log).sum();
  }

  /** The column as independent rows of unit variance, free of the intercepts. */
  double[] apply(double[] column) {
    double[] z = decorrelated(column);
    double[] level = levels(z);
    for (int i = 0; i < z.length; i++) {
      z[i] -= one[i] * level[intercepts.of(i)];
    }
    return z;
  }

  /** The best intercept of each group for {@code column}. */
  double[] intercepts(double[] column) {
    return levels(decorrelated(column));
  }

  /** Variance of each group's level, were nothing else to be found. */
  double[] levelVariances() {
    double[] variances = new double[oneNorm2.length];
    for (int g = 0; g < variances.length; g++) {
      variances[g] = 1 / oneNorm2[g];
    }
    return variances;
  }

  private double[] levels(double[] whitened) {
    double[] level = intercepts.sums(product(one, whitened));
    for (int g = 0; g < level.length; g++) {
      level[g] /= oneNorm2[g];
    }
    return level;
  }

  /** The column as independent rows of unit variance, levels left in. */
  double[] decorrelated(double[] column) {
    double[] weighted = product(product(root, root), column);
    double[] sums = blocks.sums(weighted);
    double[] z = new double[column.length];
    for (int i = 0; i < z.length; i++) {
      int block = blocks.of(i);
      z[i] = root[i] * (column[i] - pull[block] * sums[block]);
    }
    return z;
  }

  private static double[] same(double value, int size) {
    double[] values = new double[size];
    Arrays.fill(values, value);
    return values;
  }

  private static double[] product(double[] a, double[] b) {
    double[] c = new double[a.length];
    for (int i = 0; i < c.length; i++) {
      c[i] = a[i] * b[i];
    }
    return c;
  }
}

package org.limbspan.cycle;

/**
 * Weighted rows as sums over each night and over all, from which the equations of least squares
 * follow for any night part without going through the rows again.
 *
 * <p>The covariance is diag(1/p) + s^2 J within a night (compound symmetry), nothing between
 * nights; p is the precision of a row's own part at a noise factor of 1. Its inverse is diag(p) -
 * s^2/(1 + s^2 sum(p)) p p' (J. Sherman and W. J. Morrison, Ann. Math. Stat. 21, 124, 1950), so a
 * product of two columns needs their sums only. Columns are taken from their level's mean first,
 * which changes nothing but the rounding.
 */
final class NightSums {

  /** Rows that fit the processor's nearer memory with all their columns. */
  private static final int TILE = 256;

  private final Rows rows;
  private final double[] precision;
  private final double[] nightPrecision;
  private final int[] levelOfNight;
  private final double[][] means;
  private final double[][] sums;
  private final double[][] products;
  private double logPrecision = Double.NaN;

  /**
   * @param weights share of its precision that each row keeps
   */
  NightSums(Rows rows, double[] weights) {
    this.rows = rows;
    this.precision = rows.sd(1);
    for (int i = 0; i < precision.length; i++) {
      precision[i] = weights[i] / (precision[i] * precision[i]);
    }
    this.nightPrecision = rows.nights().sums(precision);
    this.levelOfNight = rows.levelOfNight();
    double[] levelPrecision = rows.levels().sums(precision);
    int columns = rows.columnCount() + 1;
    this.means = new double[columns][];
    for (int j = 0; j < columns; j++) {
      means[j] = means(column(j), levelPrecision);
    }
    this.sums = new double[columns][rows.nights().count()];
    this.products = new double[columns][columns];
    addRows();
  }

  /** Column {@code j}, the values to explain being the last. */
  private double[] column(int j) {
    return j < rows.columnCount() ? rows.column(j) : rows.y();
  }

  private double[] means(double[] column, double[] levelPrecision) {
    double[] mean = new double[levelPrecision.length];
    for (int i = 0; i < column.length; i++) {
      mean[rows.levels().of(i)] += precision[i] * column[i];
    }
    for (int g = 0; g < mean.length; g++) {
      mean[g] /= levelPrecision[g];
    }
    return mean;
  }

  private void addRows() {
    double[][] tile = new double[sums.length][TILE];
    double[] root = new double[TILE];
    for (int from = 0; from < precision.length; from += TILE) {
      int count = Math.min(TILE, precision.length - from);
      for (int t = 0; t < count; t++) {
        root[t] = Math.sqrt(precision[from + t]);
      }
      for (int j = 0; j < tile.length; j++) {
        fill(tile[j], j, root, from, count);
        for (int k = 0; k <= j; k++) {
          products[j][k] += dot(tile[j], tile[k], count);
        }
      }
    }
    for (int j = 0; j < products.length; j++) {
      for (int k = 0; k < j; k++) {
        products[k][j] = products[j][k];
      }
    }
  }

  private void fill(double[] scaled, int j, double[] root, int from, int count) {
    double[] column = column(j);
    for (int t = 0; t < count; t++) {
      int row = from + t;
      scaled[t] = root[t] * (column[row] - means[j][rows.levels().of(row)]);
      sums[j][rows.nights().of(row)] += root[t] * scaled[t];
    }
  }

  /** With four sums at a time, which the processor adds side by side. */
  private static double dot(double[] a, double[] b, int count) {
    double s0 = 0;
    double s1 = 0;
    double s2 = 0;
    double s3 = 0;
    int i = 0;
    for (; i < count - 3; i += 4) {
      s0 += a[i] * b[i];
      s1 += a[i + 1] * b[i + 1];
      s2 += a[i + 2] * b[i + 2];
      s3 += a[i + 3] * b[i + 3];
    }
    for (; i < count; i++) {
      s0 += a[i] * b[i];
    }
    return s0 + s1 + (s2 + s3);
  }

  Rows rows() {
    return rows;
  }

  /** Sum of squares of column {@code j} in units of the rows' own noise, levels left in. */
  double size2(int j) {
    double size2 = products[j][j];
    double[] levels = levelSums(nightPrecision);
    for (int g = 0; g < levels.length; g++) {
      size2 += levels[g] * means[j][g] * means[j][g];
    }
    return size2;
  }

  private double[] levelSums(double[] ofNights) {
    double[] levels = new double[rows.levels().count()];
    for (int b = 0; b < ofNights.length; b++) {
      levels[levelOfNight[b]] += ofNights[b];
    }
    return levels;
  }

  /** The sums for one choice of the night part, in units of a noise factor of 1. */
  NormalEquations equations(double nightSd) {
    return new NormalEquations(this, new With(nightSd));
  }

  /** One choice of the night part. */
  final class With {

    /** 1 + s^2 sum(p) of each night. */
    private final double[] growth;

    private final double nightVariance;
    private final double[] information;
    private final double[][] pulls;

    private With(double nightSd) {
      nightVariance = nightSd * nightSd;
      growth = new double[nightPrecision.length];
      double[] each = new double[growth.length];
      for (int b = 0; b < growth.length; b++) {
        growth[b] = 1 + nightVariance * nightPrecision[b];
        each[b] = nightPrecision[b] / growth[b];
      }
      information = levelSums(each);
      pulls = new double[sums.length][];
      for (int j = 0; j < sums.length; j++) {
        for (int b = 0; b < each.length; b++) {
          each[b] = sums[j][b] / growth[b];
        }
        pulls[j] = levelSums(each);
      }
    }

    /**
     * Products of all columns with one another, free of the levels; the last is what is explained.
     */
    double[][] products() {
      double[][] all = new double[sums.length][sums.length];
      double[][] shrunk = new double[sums.length][];
      for (int j = 0; j < sums.length; j++) {
        shrunk[j] = shrunk(sums[j]);
        for (int k = 0; k <= j; k++) {
          double product = products[j][k] - dot(shrunk[j], shrunk[k], growth.length);
          for (int g = 0; g < information.length; g++) {
            product -= pulls[j][g] * pulls[k][g] / information[g];
          }
          all[j][k] = all[k][j] = product;
        }
      }
      return all;
    }

    private double[] shrunk(double[] ofNights) {
      double[] shrunk = new double[ofNights.length];
      for (int b = 0; b < shrunk.length; b++) {
        shrunk[b] = ofNights[b] * Math.sqrt(nightVariance / growth[b]);
      }
      return shrunk;
    }

    /** The levels that belong to {@code coefficients}. */
    double[] levels(double[] coefficients) {
      int y = sums.length - 1;
      double[] levels = new double[information.length];
      for (int g = 0; g < levels.length; g++) {
        double pull = pulls[y][g];
        double mean = means[y][g];
        for (int j = 0; j < coefficients.length; j++) {
          pull -= coefficients[j] * pulls[j][g];
          mean -= coefficients[j] * means[j][g];
        }
        levels[g] = mean + pull / information[g];
      }
      return levels;
    }

    double[] levelInformation() {
      return information.clone();
    }

    /** Generalised means of the first so many columns, level by level. */
    double[][] balance(int columns) {
      double[][] balance = new double[columns][information.length];
      for (int j = 0; j < columns; j++) {
        for (int g = 0; g < information.length; g++) {
          balance[j][g] = means[j][g] + pulls[j][g] / information[g];
        }
      }
      return balance;
    }

    /** ln of the determinants of the covariance and of the levels' information, summed. */
    double logDeterminant() {
      return logSum(growth) - logPrecision() + logSum(information);
    }
  }

  /** The same for every night part, and a logarithm for every row. */
  private double logPrecision() {
    if (Double.isNaN(logPrecision)) {
      logPrecision = logSum(precision);
    }
    return logPrecision;
  }

  private static double logSum(double[] values) {
    double log = 0;
    for (double value : values) {
      log += Math.log(value);
    }
    return log;
  }
}

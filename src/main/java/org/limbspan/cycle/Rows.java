package org.limbspan.cycle;

import java.util.Arrays;
import org.hipparchus.stat.descriptive.rank.Median;

/**
 * A regression to be done: y = columns x coefficients + one free level per group + noise. Relative
 * throughout (natural logarithms).
 */
final class Rows {

  private final double[] y;
  private final double[][] columns;
  private final double[] priorPrecision;
  private final double[] stated;
  private final Grouping nights;
  private final Grouping levels;
  private double typicalStated = Double.NaN;

  /**
   * @param y what is explained
   * @param columns what explains it, each as long as {@code y}
   * @param priorPrecision inverse variance of each coefficient around zero; 0 where nothing is
   *     known
   * @param stated stated standard uncertainty of each row
   * @param nights rows of one night
   * @param levels rows of one free level
   */
  Rows(
      double[] y,
      double[][] columns,
      double[] priorPrecision,
      double[] stated,
      Grouping nights,
      Grouping levels) {
    this.y = y;
    this.columns = columns;
    this.priorPrecision = priorPrecision;
    this.stated = stated;
    this.nights = nights;
    this.levels = levels;
  }

  /** Without priors. */
  static Rows of(
      double[] y, double[][] columns, double[] stated, Grouping nights, Grouping levels) {
    return new Rows(y, columns, new double[columns.length], stated, nights, levels);
  }

  int size() {
    return y.length;
  }

  int columnCount() {
    return columns.length;
  }

  double[] y() {
    return y;
  }

  double[] column(int j) {
    return columns[j];
  }

  double priorPrecision(int j) {
    return priorPrecision[j];
  }

  Grouping nights() {
    return nights;
  }

  Grouping levels() {
    return levels;
  }

  /** The level of each night; a night has readings of one level only. */
  int[] levelOfNight() {
    int[] level = new int[nights.count()];
    for (int i = 0; i < y.length; i++) {
      level[nights.of(i)] = levels.of(i);
    }
    return level;
  }

  double typicalStated() {
    if (Double.isNaN(typicalStated)) {
      typicalStated = new Median().evaluate(stated);
    }
    return typicalStated;
  }

  /** Standard deviation of each row's own part at a noise factor. */
  double[] sd(double factor) {
    double[] sd = stated.clone();
    for (int i = 0; i < sd.length; i++) {
      sd[i] *= factor;
    }
    return sd;
  }

  /** What {@code coefficients} leave of y. */
  double[] unexplained(double[] coefficients) {
    double[] rest = y.clone();
    for (int j = 0; j < coefficients.length; j++) {
      for (int i = 0; i < rest.length; i++) {
        rest[i] -= coefficients[j] * columns[j][i];
      }
    }
    return rest;
  }

  /** {@code values} less the level of each row's group. */
  double[] without(double[] level, double[] values) {
    double[] rest = values.clone();
    for (int i = 0; i < rest.length; i++) {
      rest[i] -= level[levels.of(i)];
    }
    return rest;
  }

  /** Rows beyond what levels and coefficients without prior take up. */
  int spareRows() {
    int free = 0;
    for (double precision : priorPrecision) {
      free += precision == 0 ? 1 : 0;
    }
    return size() - levels.count() - free;
  }

  /** The same rows with {@code residuals} left to explain and nothing to explain them. */
  Rows left(double[] residuals) {
    Rows left = new Rows(residuals, new double[0][], new double[0], stated, nights, levels);
    left.typicalStated = typicalStated();
    return left;
  }

  /** The same with the first coefficient given. */
  Rows withoutFirstColumn(double coefficient) {
    double[] rest = y.clone();
    for (int i = 0; i < rest.length; i++) {
      rest[i] -= coefficient * columns[0][i];
    }
    return new Rows(
        rest,
        Arrays.copyOfRange(columns, 1, columns.length),
        Arrays.copyOfRange(priorPrecision, 1, priorPrecision.length),
        stated,
        nights,
        levels);
  }
}

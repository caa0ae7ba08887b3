package org.limbspan.cycle;

import java.util.Optional;
import org.hipparchus.exception.MathIllegalArgumentException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * A robust regression that is done, as what it says of coefficients and levels, to which further
 * nights can be added without going through the rows again.
 *
 * <p>The rows' weights and their noise are taken as they came out. Then what they say is a
 * quadratic form about the best values b: d' S d + sum over levels of D (e)^2, with d the change of
 * the coefficients, S their information free of the levels, D a level's information and e the
 * change of the level where its columns have their weighted means h, so that a row of that level
 * changes by (x - h) d + e. That is exact, and so is the addition: the fit of all rows with these
 * weights and this noise. The new rows' weights are found as {@link RobustRegression} finds them.
 */
final class KnownRegression {

  private static final double POSITIVE = 1e-14;

  private final RobustRegression.Fit fit;
  private final NightPart part;
  private final double[][] information;
  private final double[] levelInformation;
  private final double[][] balance;
  private final double[] levels;
  private final int spareRows;

  /**
   * @param fit of {@code rows}
   */
  KnownRegression(Rows rows, NightPart part, RobustRegression.Fit fit) {
    this.fit = fit;
    this.part = part;
    this.spareRows = rows.spareRows();
    double factor = fit.noise().statedFactor();
    NightSums sums = new NightSums(rows, fit.weights().toArray());
    NormalEquations equations = sums.equations(fit.noise().nightSd() / factor);
    information = equations.information(factor);
    if (part == NightPart.ABSORBED) {
      levelInformation = new double[0];
      balance = new double[information.length][0];
      levels = new double[0];
    } else {
      levelInformation = equations.levelInformation(factor);
      balance = equations.balance();
      levels = equations.levels(fit.coefficients());
    }
  }

  /** The fit of all of {@code rows}, known. */
  static Optional<KnownRegression> of(Rows rows, NightPart part, double[] start) {
    return RobustRegression.fit(rows, part, start).map(fit -> new KnownRegression(rows, part, fit));
  }

  /** What it says without anything added. */
  RobustRegression.Fit fit() {
    return fit;
  }

  /** The levels without anything added. */
  Levels levels() {
    double[] variances = levelInformation.clone();
    for (int g = 0; g < variances.length; g++) {
      variances[g] = 1 / variances[g];
    }
    return new Levels(new ArrayRealVector(levels), new ArrayRealVector(variances, false));
  }

  /**
   * Levels of all groups, none where nights are absorbed.
   *
   * @param variances of each, the coefficients being known
   */
  record Levels(RealVector values, RealVector variances) {}

  /**
   * What came out.
   *
   * @param fit weights and residuals are those of the added rows
   */
  record Grown(RobustRegression.Fit fit, Levels levels) {}

  /**
   * The regression with rows of further nights.
   *
   * @param rows with the same columns; levels numbered on from the known ones, or, where nights are
   *     absorbed, by themselves
   * @return empty where the columns cannot be told apart
   */
  Optional<Grown> with(Rows rows) {
    return new Addition(rows).settled();
  }

  /** The rows that are added, as what the known values leave of them. */
  private final class Addition {

    private final Rows rows;
    private final double[][] columns;
    private final double[] rest;
    private final double[] start;

    private Addition(Rows rows) {
      this.rows = rows;
      this.columns = new double[information.length][];
      double[] known = fit.coefficients().toArray();
      double[] unexplained = rows.unexplained(known);
      this.start = startLevels(unexplained);
      this.rest = start.length == 0 ? absorbed(unexplained) : rows.without(start, unexplained);
      for (int j = 0; j < columns.length; j++) {
        columns[j] =
            start.length == 0 ? rows.column(j).clone() : rows.without(balanced(j), rows.column(j));
      }
    }

    private double[] absorbed(double[] unexplained) {
      return rows.without(rows.levels().medians(unexplained), unexplained);
    }

    /** Known levels, and for each new one the median of what is left of its rows. */
    private double[] startLevels(double[] unexplained) {
      if (part == NightPart.ABSORBED) {
        return new double[0];
      }
      double[] all = rows.levels().medians(unexplained);
      System.arraycopy(levels, 0, all, 0, levels.length);
      return all;
    }

    /** Where each level's columns have their mean: known, or for a new one the median. */
    private double[] balanced(int j) {
      double[] all = rows.levels().medians(rows.column(j));
      System.arraycopy(balance[j], 0, all, 0, levels.length);
      return all;
    }

    private Optional<Grown> settled() {
      double[] residuals = rest;
      double[] weights = weights(residuals, OutlierWeights.ones(rest.length));
      for (int round = 0; ; round++) {
        Equations equations = new Equations(weights);
        Optional<CholeskyDecomposition> root = equations.root();
        if (root.isEmpty()) {
          return Optional.empty();
        }
        double[] change = equations.solution(root.get());
        residuals = residuals(change);
        double[] next = weights(residuals, weights);
        if (round == RobustRegression.MAX_ROUNDS
            || RobustRegression.change(weights, next) < RobustRegression.SETTLED) {
          return Optional.of(grown(equations, root.get(), change, weights, residuals));
        }
        weights = next;
      }
    }

    private double[] weights(double[] residuals, double[] previous) {
      return RobustRegression.weights(rows, part, fit.noise(), residuals, previous);
    }

    private double[] residuals(double[] change) {
      double[] left = rest.clone();
      for (int j = 0; j < columns.length; j++) {
        for (int i = 0; i < left.length; i++) {
          left[i] -= change[j] * columns[j][i];
        }
      }
      for (int i = 0; i < left.length && start.length > 0; i++) {
        left[i] -= change[columns.length + rows.levels().of(i)];
      }
      return left;
    }

    private Grown grown(
        Equations equations,
        CholeskyDecomposition root,
        double[] change,
        double[] weights,
        double[] residuals) {
      int q = columns.length;
      RealVector coefficients = fit.coefficients().copy();
      double[] all = start.clone();
      double[] variances = new double[all.length];
      for (int j = 0; j < q; j++) {
        coefficients.addToEntry(j, change[j]);
      }
      for (int g = 0; g < all.length; g++) {
        all[g] += change[q + g];
        variances[g] = 1 / equations.matrix[q + g][q + g];
      }
      for (int j = 0; j < q && all.length > 0; j++) {
        double[] at = balanced(j);
        for (int g = 0; g < all.length; g++) {
          all[g] -= at[g] * change[j];
        }
      }
      RobustRegression.Fit grown =
          new RobustRegression.Fit(
              coefficients,
              equations.covariance(root),
              fit.noise(),
              new ArrayRealVector(weights, false),
              new ArrayRealVector(residuals, false));
      int newLevels =
          part == NightPart.ABSORBED ? rows.levels().count() : all.length - levels.length;
      return new Grown(
          RobustRegression.widened(grown, spareRows + rows.size() - newLevels),
          new Levels(new ArrayRealVector(all, false), new ArrayRealVector(variances, false)));
    }

    /** Known and added information about the changes of coefficients and levels. */
    private final class Equations {

      private final int size;
      private final double[][] matrix;
      private final double[] right;

      private Equations(double[] weights) {
        int q = columns.length;
        size = q + start.length;
        matrix = new double[size][size];
        right = new double[size];
        for (int j = 0; j < q; j++) {
          System.arraycopy(information[j], 0, matrix[j], 0, q);
        }
        for (int g = 0; g < levelInformation.length; g++) {
          matrix[q + g][q + g] = levelInformation[g];
        }
        addRows(weights);
      }

      private void addRows(double[] weights) {
        int nights = rows.nights().count();
        double[] precision = rows.sd(fit.noise().statedFactor());
        double[] precisions = new double[nights];
        double[][] sums = new double[nights][size];
        double[] ofRest = new double[nights];
        double[] row = new double[size];
        for (int i = 0; i < precision.length; i++) {
          precision[i] = weights[i] / (precision[i] * precision[i]);
          int night = rows.nights().of(i);
          fill(row, i);
          add(row, row, precision[i], rest[i]);
          precisions[night] += precision[i];
          ofRest[night] += precision[i] * rest[i];
          for (int j = 0; j < size; j++) {
            sums[night][j] += precision[i] * row[j];
          }
        }
        for (int b = 0; b < nights; b++) {
          add(sums[b], sums[b], -shrink(precisions[b]), ofRest[b]);
        }
      }

      private double shrink(double precision) {
        double variance = fit.noise().nightSd() * fit.noise().nightSd();
        return part == NightPart.ABSORBED ? 1 / precision : variance / (1 + variance * precision);
      }

      private void fill(double[] row, int i) {
        for (int j = 0; j < columns.length; j++) {
          row[j] = columns[j][i];
        }
        for (int g = 0; g < start.length; g++) {
          row[columns.length + g] = g == rows.levels().of(i) ? 1 : 0;
        }
      }

      private void add(double[] a, double[] b, double factor, double value) {
        for (int j = 0; j < size; j++) {
          if (a[j] != 0) {
            right[j] += factor * a[j] * value;
            for (int k = 0; k < size; k++) {
              matrix[j][k] += factor * a[j] * b[k];
            }
          }
        }
      }

      /** In units in which the diagonal is one. */
      private Optional<CholeskyDecomposition> root() {
        double[][] normal = new double[size][size];
        for (int j = 0; j < size; j++) {
          if (!(matrix[j][j] > 0)) {
            return Optional.empty();
          }
          for (int k = 0; k <= j; k++) {
            normal[j][k] = matrix[j][k] * scale(j) * scale(k);
            normal[k][j] = normal[j][k];
          }
        }
        try {
          return size == 0
              ? Optional.empty()
              : Optional.of(
                  new CholeskyDecomposition(
                      new Array2DRowRealMatrix(normal, false), 1e-9, POSITIVE));
        } catch (MathIllegalArgumentException singular) {
          return Optional.empty();
        }
      }

      private double scale(int j) {
        return 1 / Math.sqrt(matrix[j][j]);
      }

      private double[] solution(CholeskyDecomposition root) {
        RealVector scaled = new ArrayRealVector(size);
        for (int j = 0; j < size; j++) {
          scaled.setEntry(j, right[j] * scale(j));
        }
        double[] solution = root.getSolver().solve(scaled).toArray();
        for (int j = 0; j < size; j++) {
          solution[j] *= scale(j);
        }
        return solution;
      }

      private RealMatrix covariance(CholeskyDecomposition root) {
        int q = columns.length;
        if (q == 0) {
          return new Array2DRowRealMatrix();
        }
        RealMatrix covariance = root.getSolver().getInverse().getSubMatrix(0, q - 1, 0, q - 1);
        for (int j = 0; j < q; j++) {
          for (int k = 0; k < q; k++) {
            covariance.multiplyEntry(j, k, scale(j) * scale(k));
          }
        }
        return covariance;
      }
    }
  }
}

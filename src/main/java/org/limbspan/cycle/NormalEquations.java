package org.limbspan.cycle;

import java.util.Optional;
import org.hipparchus.exception.MathIllegalArgumentException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Least squares of rows that share nights and levels, kept as sums so that the overall noise factor
 * can be varied at no cost. Coefficients may carry a normal prior around zero.
 */
final class NormalEquations {

  /** Below this share of its own size a column counts as a mixture of the others. */
  private static final double SINGULAR = 1e-11;

  /** Below this share of its own size a column counts as equal to the intercepts. */
  private static final double LEVEL = 1e-12;

  private static final RealMatrix NO_COVARIANCE = new Array2DRowRealMatrix();

  private final double[][] products;
  private final double[] rightSide;
  private final double squares;
  private final int degrees;
  private final NightSums.With sums;
  private double logDeterminant = Double.NaN;
  private final double[] priorPrecision;

  /** The sums of rows for a noise factor of 1. */
  NormalEquations(NightSums nights, NightSums.With sums) {
    Rows rows = nights.rows();
    int q = rows.columnCount();
    this.sums = sums;
    products = sums.products();
    priorPrecision = new double[q];
    rightSide = new double[q];
    for (int j = 0; j < q; j++) {
      priorPrecision[j] = rows.priorPrecision(j);
      if (products[j][j] < LEVEL * nights.size2(j)) {
        forget(j);
      }
      rightSide[j] = products[j][q];
    }
    squares = products[q][q];
    degrees = rows.size() - rows.levels().count();
  }

  private void forget(int j) {
    for (int k = 0; k < products.length; k++) {
      products[j][k] = products[k][j] = 0;
    }
  }

  /** Best coefficients at a given noise factor. */
  record Solution(RealVector coefficients, RealMatrix covariance) {}

  /** Empty where a column says nothing that the levels and the others do not say. */
  Optional<Solution> solve(double factor) {
    if (rightSide.length == 0) {
      return Optional.of(new Solution(new ArrayRealVector(), NO_COVARIANCE));
    }
    return root(factor).map(Root::solution);
  }

  /**
   * ln of the restricted likelihood at a noise factor, up to a constant (Patterson and Thompson,
   * Biometrika 58, 545, 1971); coefficients with a prior are integrated over it.
   *
   * @return minus infinity where there is no solution
   */
  double logRestrictedLikelihood(double factor) {
    double log = -degrees * Math.log(factor) - logDeterminant() / 2;
    double all = squares / (factor * factor);
    if (rightSide.length == 0) {
      return log - all / 2;
    }
    return root(factor)
        .map(r -> log - (all + r.logDeterminant() - r.explained()) / 2)
        .orElse(Double.NEGATIVE_INFINITY);
  }

  /** A logarithm for every night, so only where it is asked for, and once. */
  private double logDeterminant() {
    if (Double.isNaN(logDeterminant)) {
      logDeterminant = sums.logDeterminant();
    }
    return logDeterminant;
  }

  /** How much of the sum of squares the columns explain, in units of the rows' noise. */
  double explained() {
    return rightSide.length == 0 ? 0 : root(1).map(Root::explained).orElse(0.0);
  }

  /** That of the coefficients at a noise factor, free of the levels, priors included. */
  double[][] information(double factor) {
    double[][] information = new double[rightSide.length][rightSide.length];
    for (int j = 0; j < information.length; j++) {
      for (int k = 0; k < information.length; k++) {
        information[j][k] = products[j][k] / (factor * factor);
      }
      information[j][j] += priorPrecision[j];
    }
    return information;
  }

  /** That of each level at a noise factor, the coefficients being known. */
  double[] levelInformation(double factor) {
    double[] information = sums.levelInformation();
    for (int g = 0; g < information.length; g++) {
      information[g] /= factor * factor;
    }
    return information;
  }

  /** Where each coefficient's column has its mean, level by level. */
  double[][] balance() {
    return sums.balance(rightSide.length);
  }

  /** The levels that go with {@code coefficients}. */
  double[] levels(RealVector coefficients) {
    return sums.levels(coefficients.toArray());
  }

  private Optional<Root> root(double factor) {
    int q = rightSide.length;
    double precision = 1 / (factor * factor);
    double[] scale = new double[q];
    for (int j = 0; j < q; j++) {
      double diagonal = products[j][j] * precision + priorPrecision[j];
      if (!(diagonal > 0)) {
        return Optional.empty();
      }
      scale[j] = 1 / Math.sqrt(diagonal);
    }
    double[][] normal = new double[q][q];
    double[] right = new double[q];
    for (int j = 0; j < q; j++) {
      right[j] = rightSide[j] * precision * scale[j];
      for (int k = 0; k < q; k++) {
        double own = j == k ? priorPrecision[j] : 0;
        normal[j][k] = (products[j][k] * precision + own) * scale[j] * scale[k];
      }
    }
    try {
      CholeskyDecomposition root =
          new CholeskyDecomposition(new Array2DRowRealMatrix(normal, false), 1e-9, SINGULAR);
      return Optional.of(new Root(root, scale, right));
    } catch (MathIllegalArgumentException singular) {
      return Optional.empty();
    }
  }

  /** The root of the equations in units in which their diagonal is one. */
  private final class Root {

    private final CholeskyDecomposition decomposition;
    private final double[] scale;
    private final RealVector right;
    private final RealVector scaled;

    private Root(CholeskyDecomposition decomposition, double[] scale, double[] right) {
      this.decomposition = decomposition;
      this.scale = scale;
      this.right = new ArrayRealVector(right, false);
      this.scaled = decomposition.getSolver().solve(this.right);
    }

    private double explained() {
      return scaled.dotProduct(right);
    }

    private double logDeterminant() {
      double log = Math.log(decomposition.getDeterminant());
      for (int j = 0; j < scale.length; j++) {
        log -= 2 * Math.log(scale[j]);
        if (priorPrecision[j] > 0) {
          log -= Math.log(priorPrecision[j]);
        }
      }
      return log;
    }

    private Solution solution() {
      RealVector units = new ArrayRealVector(scale, false);
      RealMatrix covariance = decomposition.getSolver().getInverse();
      for (int j = 0; j < scale.length; j++) {
        for (int k = 0; k < scale.length; k++) {
          covariance.multiplyEntry(j, k, scale[j] * scale[k]);
        }
      }
      return new Solution(scaled.ebeMultiply(units), covariance);
    }
  }
}

package org.limbspan.cycle;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.exception.MathIllegalArgumentException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Least squares of whitened rows, kept as sums so that the overall noise factor can be varied at no
 * cost. Coefficients may carry a normal prior around zero.
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
  private final double logDeterminant;
  private final double[] priorPrecision;

  /** The sums of rows whitened for a noise factor of 1. */
  NormalEquations(Whitening whitening, Rows rows) {
    int q = rows.columnCount();
    double[][] a = new double[q][];
    priorPrecision = new double[q];
    for (int j = 0; j < q; j++) {
      priorPrecision[j] = rows.priorPrecision(j);
      a[j] = whitening.apply(rows.column(j));
    }
    double[] b = whitening.apply(rows.y());
    products = new double[q][q];
    rightSide = new double[q];
    for (int j = 0; j < q; j++) {
      if (dot(a[j], a[j]) < LEVEL * whitening.size2(rows.column(j))) {
        Arrays.fill(a[j], 0);
      }
      rightSide[j] = dot(a[j], b);
      for (int k = 0; k <= j; k++) {
        products[j][k] = products[k][j] = dot(a[j], a[k]);
      }
    }
    squares = dot(b, b);
    degrees = b.length - rows.levels().count();
    logDeterminant = whitening.logDeterminant();
  }

  /**
   * Best coefficients at a given noise factor.
   *
   * @param logRestrictedLikelihood up to a constant (Patterson and Thompson, Biometrika 58, 545,
   *     1971), coefficients with a prior integrated over it
   */
  record Solution(RealVector coefficients, RealMatrix covariance, double logRestrictedLikelihood) {}

  /** Empty where a column says nothing that the intercepts and the others do not say. */
  Optional<Solution> solve(double factor) {
    int q = rightSide.length;
    double precision = 1 / (factor * factor);
    if (q == 0) {
      double log = -degrees * Math.log(factor) - (logDeterminant + squares * precision) / 2;
      return Optional.of(new Solution(new ArrayRealVector(), NO_COVARIANCE, log));
    }
    double[] scale = new double[q];
    double logDetNormal = 0;
    for (int j = 0; j < q; j++) {
      double diagonal = products[j][j] * precision + priorPrecision[j];
      if (!(diagonal > 0)) {
        return Optional.empty();
      }
      scale[j] = 1 / Math.sqrt(diagonal);
      logDetNormal += Math.log(diagonal);
      if (priorPrecision[j] > 0) {
        logDetNormal -= Math.log(priorPrecision[j]);
      }
    }
    RealMatrix normal = new Array2DRowRealMatrix(q, q);
    double[] right = new double[q];
    for (int j = 0; j < q; j++) {
      right[j] = rightSide[j] * precision * scale[j];
      for (int k = 0; k < q; k++) {
        double own = j == k ? priorPrecision[j] : 0;
        normal.setEntry(j, k, (products[j][k] * precision + own) * scale[j] * scale[k]);
      }
    }
    CholeskyDecomposition root;
    try {
      root = new CholeskyDecomposition(normal, 1e-9, SINGULAR);
    } catch (MathIllegalArgumentException singular) {
      return Optional.empty();
    }
    double[] scaled = root.getSolver().solve(new ArrayRealVector(right)).toArray();
    RealMatrix covariance = root.getSolver().getInverse();
    double quadratic = squares * precision - dot(scaled, right);
    for (int j = 0; j < q; j++) {
      scaled[j] *= scale[j];
      for (int k = 0; k < q; k++) {
        covariance.multiplyEntry(j, k, scale[j] * scale[k]);
      }
    }
    double log =
        -degrees * Math.log(factor)
            - (logDeterminant + logDetNormal + Math.log(root.getDeterminant()) + quadratic) / 2;
    return Optional.of(new Solution(new ArrayRealVector(scaled), covariance, log));
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}

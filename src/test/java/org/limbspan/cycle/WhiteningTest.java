package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/** Held to generalised least squares with the whole covariance matrix, by Hipparchus. */
class WhiteningTest {

  private static final double[] ROOT = {2, 3, 1, 5, 4, 2};
  private static final Grouping BLOCKS = Grouping.by(List.of("a", "b", "a", "c", "c", "d"));
  private static final Grouping LEVELS = Grouping.by(List.of(7, 7, 7, 9, 9, 9));
  private static final double BLOCK_SD = 0.4;
  private static final double[] X = {1, -2, 0.5, 3, 1.5, -1};
  private static final double[] Y = {2, 1, -1, 4, 0.3, 2.2};

  private final Whitening whitening = new Whitening(ROOT, BLOCKS, BLOCK_SD, LEVELS);

  @Test
  void agreesWithTheWholeCovarianceMatrix() {
    RealMatrix design = new Array2DRowRealMatrix(6, 3);
    for (int i = 0; i < 6; i++) {
      design.setEntry(i, LEVELS.of(i), 1);
      design.setEntry(i, 2, X[i]);
    }
    RealMatrix information =
        design.transpose().multiply(new LUDecomposition(covariance()).getSolver().solve(design));
    RealVector right =
        design
            .transpose()
            .operate(new LUDecomposition(covariance()).getSolver().solve(new ArrayRealVector(Y)));
    RealVector expected = new LUDecomposition(information).getSolver().solve(right);

    RealVector x = new ArrayRealVector(whitening.apply(X));
    RealVector y = new ArrayRealVector(whitening.apply(Y));
    double slope = x.dotProduct(y) / x.dotProduct(x);
    RealVector rest = new ArrayRealVector(Y).subtract(new ArrayRealVector(X).mapMultiply(slope));

    assertThat(slope).isCloseTo(expected.getEntry(2), within(1e-12));
    assertThat(whitening.intercepts(rest.toArray())[0])
        .isCloseTo(expected.getEntry(0), within(1e-12));
    assertThat(whitening.intercepts(rest.toArray())[1])
        .isCloseTo(expected.getEntry(1), within(1e-12));
  }

  @Test
  void knowsTheDeterminants() {
    RealMatrix levels = new Array2DRowRealMatrix(6, 2);
    for (int i = 0; i < 6; i++) {
      levels.setEntry(i, LEVELS.of(i), 1);
    }
    RealMatrix information =
        levels.transpose().multiply(new LUDecomposition(covariance()).getSolver().solve(levels));
    double expected =
        Math.log(new LUDecomposition(covariance()).getDeterminant())
            + Math.log(new LUDecomposition(information).getDeterminant());
    assertThat(whitening.logDeterminant()).isCloseTo(expected, within(1e-12));
  }

  private static RealMatrix covariance() {
    RealMatrix v = new Array2DRowRealMatrix(6, 6);
    for (int i = 0; i < 6; i++) {
      for (int j = 0; j < 6; j++) {
        double shared = BLOCKS.of(i) == BLOCKS.of(j) ? BLOCK_SD * BLOCK_SD : 0;
        v.setEntry(i, j, shared + (i == j ? 1 / (ROOT[i] * ROOT[i]) : 0));
      }
    }
    return v;
  }
}

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
class NightSumsTest {

  private static final double[] STATED = {0.5, 0.4, 1, 0.2, 0.25, 0.5};
  private static final double[] WEIGHTS = {1, 0.3, 0.9, 1, 0.05, 0.7};
  private static final Grouping NIGHTS = Grouping.by(List.of("a", "b", "a", "c", "c", "d"));
  private static final Grouping LEVELS = Grouping.by(List.of(7, 7, 7, 9, 9, 9));
  private static final double[] X = {1, -2, 0.5, 3, 1.5, -1};

  /** Far from zero in one level: nothing may be lost in the rounding. */
  private static final double[] Y = {1002, 1001, 999, 4, 0.3, 2.2};

  private final NightSums sums =
      new NightSums(Rows.of(Y, new double[][] {X}, STATED, NIGHTS, LEVELS), WEIGHTS);

  @Test
  void solvesAsTheWholeCovarianceMatrixDoes() {
    Whole whole = new Whole(1.7, 0.4);
    NormalEquations equations = sums.equations(0.4 / 1.7);
    NormalEquations.Solution solution = equations.solve(1.7).orElseThrow();

    assertThat(solution.coefficients().getEntry(0))
        .isCloseTo(whole.best.getEntry(2), within(1e-11));
    assertThat(solution.covariance().getEntry(0, 0))
        .isCloseTo(
            new LUDecomposition(whole.information).getSolver().getInverse().getEntry(2, 2),
            within(1e-11));
    assertThat(equations.levels(solution.coefficients()))
        .containsExactly(
            new double[] {whole.best.getEntry(0), whole.best.getEntry(1)}, within(1e-10));
  }

  @Test
  void hasItsRestrictedLikelihoodUpToAConstant() {
    double here =
        sums.equations(0.4 / 1.7).logRestrictedLikelihood(1.7)
            - new Whole(1.7, 0.4).logLikelihood();
    double there =
        sums.equations(0.9 / 0.6).logRestrictedLikelihood(0.6)
            - new Whole(0.6, 0.9).logLikelihood();
    double withoutNight =
        sums.equations(0).logRestrictedLikelihood(1.2) - new Whole(1.2, 0).logLikelihood();

    assertThat(there).isCloseTo(here, within(1e-9));
    assertThat(withoutNight).isCloseTo(here, within(1e-9));
  }

  @Test
  void aColumnThatIsTheLevelsSaysNothing() {
    double[] levels = {7, 7, 7, 9, 9, 9};
    NightSums same =
        new NightSums(Rows.of(Y, new double[][] {levels}, STATED, NIGHTS, LEVELS), WEIGHTS);
    assertThat(same.equations(0.3).solve(1)).isEmpty();
  }

  /** Least squares with all six rows' covariance written out. */
  private static final class Whole {

    private final RealMatrix covariance = new Array2DRowRealMatrix(6, 6);
    private final RealMatrix information;
    private final RealVector best;
    private final RealVector rest;

    private Whole(double factor, double nightSd) {
      RealMatrix design = new Array2DRowRealMatrix(6, 3);
      for (int i = 0; i < 6; i++) {
        design.setEntry(i, LEVELS.of(i), 1);
        design.setEntry(i, 2, X[i]);
        for (int j = 0; j < 6; j++) {
          double shared = NIGHTS.of(i) == NIGHTS.of(j) ? nightSd * nightSd : 0;
          double own = i == j ? Math.pow(factor * STATED[i], 2) / WEIGHTS[i] : 0;
          covariance.setEntry(i, j, shared + own);
        }
      }
      RealVector y = new ArrayRealVector(Y);
      information = design.transpose().multiply(inverse()).multiply(design);
      best =
          new LUDecomposition(information)
              .getSolver()
              .solve(design.transpose().operate(inverse().operate(y)));
      rest = y.subtract(design.operate(best));
    }

    private RealMatrix inverse() {
      return new LUDecomposition(covariance).getSolver().getInverse();
    }

    private double logLikelihood() {
      return -(Math.log(new LUDecomposition(covariance).getDeterminant())
              + Math.log(new LUDecomposition(information).getDeterminant())
              + rest.dotProduct(inverse().operate(rest)))
          / 2;
    }
  }
}

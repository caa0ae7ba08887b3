package org.limbspan.limb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.limbspan.limb.MeasureOptions.ExpectedFlattening;

class FlatteningPriorTest {

  /** What was measured before the prior is applied: the flattening itself, alone. */
  private static LimbCovariance.Solution measured(double sigma) {
    RealMatrix nothing = MatrixUtils.createRealMatrix(1, 1);
    RealMatrix total = MatrixUtils.createRealDiagonalMatrix(new double[] {sigma * sigma}).copy();
    return new LimbCovariance.Solution(
        MatrixUtils.createRealVector(new double[] {0}), nothing, nothing, nothing, total, 0);
  }

  /**
   * Against the same integrals in two hundred thousand steps; an expectation a hundred times
   * narrower than the measurement is what a half Moon at a good altitude has.
   */
  @ParameterizedTest
  @CsvSource({
    "0.004,  0.0075, 0.0003, 0.0001",
    "0.0004, 0.0002, 0.0003, 0.0001",
    "0.02,   0.004,  0.018,  0.0006",
    "0.09,   0.001,  0.1,    0.003",
    "0.03,   0.001,  0.0003, 0.0001"
  })
  void weighsMeasurementAndExpectation(
      double found, double sigma, double expected, double uncertainty) {
    double sum = 0;
    double first = 0;
    double second = 0;
    int steps = 200_000;
    for (int i = 0; i <= steps; i++) {
      double f = found + 12 * sigma * (2.0 * i / steps - 1);
      double usual =
          f >= 0 ? 1 / (1 + Math.pow(f / 0.0006, 2)) : Math.exp(-0.5 * Math.pow(f / 0.0004, 2));
      double prior =
          0.02 * 2 / (Math.PI * 0.0006) * usual
              + 0.98
                  * Math.exp(-0.5 * Math.pow((f - expected) / uncertainty, 2))
                  / (uncertainty * Math.sqrt(2 * Math.PI));
      double weight = prior * Math.exp(-0.5 * Math.pow((f - found) / sigma, 2));
      sum += weight;
      first += weight * f;
      second += weight * f * f;
    }
    double mean = first / sum;
    double deviation = Math.sqrt(second / sum - mean * mean);

    LimbCovariance.Solution known =
        new FlatteningPrior(Optional.of(new ExpectedFlattening(expected, uncertainty)))
            .applied(measured(sigma), found, new double[] {1});

    assertThat(found + known.values().getEntry(0)).isCloseTo(mean, within(0.03 * deviation));
    assertThat(Math.sqrt(known.total().getEntry(0, 0)))
        .isCloseTo(deviation, within(0.03 * deviation));
  }
}

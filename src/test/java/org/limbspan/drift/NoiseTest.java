package org.limbspan.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Densities against those of Hipparchus. */
class NoiseTest {

  private static final double DEVIATION = 0.3;
  private static final double VARIANCE = DEVIATION * DEVIATION;

  @Test
  void hasTheNormalDensity() {
    NormalDistribution normal = new NormalDistribution(0, DEVIATION);
    for (double x = -2; x <= 2; x += 0.25) {
      assertThat(Noise.normalDensity(x * x / VARIANCE, VARIANCE))
          .isCloseTo(normal.density(x), within(1e-12));
    }
  }

  /** The series of the gamma functions is good to 1e-3 for the fewest degrees that occur, 2. */
  @ParameterizedTest
  @ValueSource(doubles = {2, 4, 8, 30, 400})
  void hasStudentsDensity(double freedom) {
    TDistribution student = new TDistribution(freedom);
    for (double x = -2; x <= 2; x += 0.25) {
      double expected = student.density(x / DEVIATION) / DEVIATION;
      assertThat(Noise.studentDensity(x * x / VARIANCE, VARIANCE, freedom))
          .isCloseTo(expected, within((freedom < 4 ? 2e-3 : 2e-4) * expected));
    }
  }

  @Test
  void sharesOutItsProbability() {
    IterativeLegendreGaussIntegrator integrator =
        new IterativeLegendreGaussIntegrator(20, 1e-8, 1e-10);
    double blunders = integrator.integrate(1_000_000, x -> Noise.blunderDensity(x, 0), -30.0, 30.0);
    assertThat(blunders).isCloseTo(Noise.BLUNDER_SHARE, within(2e-6));
    assertThat(Noise.USUAL_SHARE + Noise.OUTLIER_SHARE + Noise.BLUNDER_SHARE)
        .isCloseTo(1, within(1e-15));
  }

  @Test
  void addsLogarithmsWithoutLeavingTheRange() {
    assertThat(Noise.logSum(Math.log(2), Math.log(3))).isCloseTo(Math.log(5), within(1e-14));
    assertThat(Noise.logSum(-5000, -5000)).isCloseTo(-5000 + Math.log(2), within(1e-9));
    assertThat(Noise.logSum(Double.NEGATIVE_INFINITY, 3)).isEqualTo(3);
    assertThat(Noise.logSum(Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY))
        .isEqualTo(Double.NEGATIVE_INFINITY);
  }
}

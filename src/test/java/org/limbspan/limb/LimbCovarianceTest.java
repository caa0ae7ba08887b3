package org.limbspan.limb;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;

class LimbCovarianceTest {

  private static final Outline DISC = Outline.circle(500, 500, 400);
  private static final LimbCovariance.Relief RELIEF =
      new LimbCovariance.Relief(0.12, Math.toRadians(8.7));
  private static final double NOISE_PX = 0.05;

  /** A whole limb seen equally well all round, whose normal equations cancel to rounding. */
  @Test
  void solvesAnEvenLimbAllRound() {
    double[] angles = angles(0, 360);
    LimbCovariance.Solution solution = limb(angles, new double[angles.length]).solve(0.1);

    assertThat(solution.values().getNorm()).isLessThan(1e-9);
    assertThat(solution.total().getEntry(2, 2)).isPositive();
  }

  /**
   * Half a limb with a ripple of its own each time, a tenth to half of a pixel over 1 to 5 degrees:
   * the errors of the radius are as large as stated.
   */
  @Test
  void statesTheErrorThatAnUnknownRippleLeaves() {
    double[] angles = angles(5, 175);
    Random random = new Random(3);
    int draws = 120;
    double square = 0;
    for (int i = 0; i < draws; i++) {
      double size = 0.1 + 0.4 * random.nextDouble();
      double length = Math.toRadians(1 + 4 * random.nextDouble());
      double[] shifts = drawn(angles, size, length, random);
      LimbCovariance.Solution solution = limb(angles, shifts).solve(size);
      square +=
          Math.pow(solution.values().getEntry(2), 2) / solution.total().getEntry(2, 2) / draws;
    }

    assertThat(Math.sqrt(square)).isBetween(0.8, 1.2);
  }

  private static double[] angles(double fromDeg, double toDeg) {
    double[] angles = new double[(int) ((toDeg - fromDeg) / 3)];
    for (int i = 0; i < angles.length; i++) {
      angles[i] = Math.toRadians(fromDeg + 3 * i);
    }
    return angles;
  }

  /** Centre and radii are sought; the radii are held to be equal within 0.04 px. */
  private static LimbCovariance limb(double[] angles, double[] shifts) {
    double[][] design = new double[angles.length][];
    for (int i = 0; i < design.length; i++) {
      double[] motion = DISC.outwardMotion(angles[i]);
      design[i] = new double[] {motion[0], motion[1], motion[2] + motion[3], motion[3]};
    }
    double[] variances = new double[angles.length];
    Arrays.fill(variances, NOISE_PX * NOISE_PX);
    double free = Double.POSITIVE_INFINITY;
    return new LimbCovariance(
        angles,
        design,
        shifts,
        variances,
        RELIEF,
        new double[4],
        new double[] {free, free, free, 0.04});
  }

  /** Relief and ripple, with a correlation of another form than the one assumed, and noise. */
  private static double[] drawn(double[] angles, double size, double length, Random random) {
    int n = angles.length;
    RealMatrix covariance = MatrixUtils.createRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double apart = angles[i] - angles[j];
        covariance.setEntry(
            i, j, squared(0.12, Math.toRadians(12), apart) + squared(size, length, apart));
      }
      covariance.addToEntry(i, i, NOISE_PX * NOISE_PX);
    }
    double[] unit = new double[n];
    for (int i = 0; i < n; i++) {
      unit[i] = random.nextGaussian();
    }
    return new CholeskyDecomposition(covariance, 1e-9, 1e-12).getL().operate(unit);
  }

  private static double squared(double size, double length, double apart) {
    return size * size * Math.exp(-apart * apart / (2 * length * length));
  }
}

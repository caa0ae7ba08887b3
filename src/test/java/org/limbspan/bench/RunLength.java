package org.limbspan.bench;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Average run lengths of control charts on normal readings of known mean and standard deviation 1,
 * by a Markov chain over the cells of the chart's statistic (D. Brook and D. A. Evans, Biometrika
 * 59, 539, 1972): the known limit beside which the detection of changes is set.
 *
 * <p>The CUSUM with reference value half the shift is the quickest of all for its rate of false
 * alarms (G. Lorden, Ann. Math. Stat. 42, 1897, 1971; G. V. Moustakides, Ann. Stat. 14, 1379,
 * 1986).
 */
final class RunLength {

  private static final NormalDistribution NORMAL = new NormalDistribution();
  private static final int CELLS = 401;
  private static final double LARGE_SHIFT = 1.5;

  private RunLength() {}

  /** Of the one-sided CUSUM max(0, C + x - k), signalling beyond h, from zero. */
  static double oneSidedCusum(double reference, double limit, double shift) {
    double width = 2 * limit / (2 * CELLS - 1);
    RealMatrix system = new Array2DRowRealMatrix(CELLS, CELLS);
    for (int from = 0; from < CELLS; from++) {
      double mean = from * width - reference + shift;
      for (int to = 0; to < CELLS; to++) {
        double below = to == 0 ? 0 : NORMAL.cumulativeProbability((to - 0.5) * width - mean);
        double above = NORMAL.cumulativeProbability((to + 0.5) * width - mean);
        system.setEntry(from, to, (from == to ? 1 : 0) - (above - below));
      }
    }
    return solve(system)[0];
  }

  /**
   * Of the two one-sided charts together (J. van Dobben de Bruyn 1968): the rates add. For a large
   * shift the far chart's run length is beyond what the matrix can tell, and its rate is nothing.
   */
  static double twoSidedCusum(double reference, double limit, double shift) {
    double nearRate = 1 / oneSidedCusum(reference, limit, Math.abs(shift));
    double farRate =
        Math.abs(shift) > LARGE_SHIFT ? 0 : 1 / oneSidedCusum(reference, limit, -Math.abs(shift));
    return 1 / (nearRate + farRate);
  }

  /** Of the two-sided EWMA with fixed limits, {@code factor} standard deviations of itself. */
  static double ewma(double weight, double factor, double shift) {
    double limit = factor * Math.sqrt(weight / (2 - weight));
    double width = 2 * limit / CELLS;
    RealMatrix system = new Array2DRowRealMatrix(CELLS, CELLS);
    for (int from = 0; from < CELLS; from++) {
      double centre = -limit + (from + 0.5) * width;
      DoubleUnaryOperator reach =
          edge -> NORMAL.cumulativeProbability((edge - (1 - weight) * centre) / weight - shift);
      for (int to = 0; to < CELLS; to++) {
        double low = -limit + to * width;
        double chance = reach.applyAsDouble(low + width) - reach.applyAsDouble(low);
        system.setEntry(from, to, (from == to ? 1 : 0) - chance);
      }
    }
    return solve(system)[CELLS / 2];
  }

  private static double[] solve(RealMatrix system) {
    double[] ones = new double[CELLS];
    java.util.Arrays.fill(ones, 1);
    return new LUDecomposition(system).getSolver().solve(new ArrayRealVector(ones)).toArray();
  }
}

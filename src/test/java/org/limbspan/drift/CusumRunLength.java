package org.limbspan.drift;

import java.util.Arrays;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Average run length of a CUSUM of normal values whose level and scatter are known: the known limit
 * beside which the bench sets its figures.
 *
 * <p>Definition: S = max(0, S + x - k), a signal where S reaches h; x normal with the shift as mean
 * and standard deviation 1. Algorithm: S as a Markov chain of equal cells, solved for the expected
 * time to absorption; D. Brook and D. A. Evans (1972), An approach to the probability distribution
 * of CUSUM run length, Biometrika 59, 539. Error with 120 cells below 0.1 percent for h up to 8.
 */
final class CusumRunLength {

  private static final int CELLS = 120;
  private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);

  private final double k;
  private final double h;

  CusumRunLength(double k, double h) {
    this.k = k;
    this.h = h;
  }

  /** Mean number of values up to the signal, from S = 0 on. */
  double oneSided(double shift) {
    double width = 2 * h / (2 * CELLS - 1);
    RealMatrix stay = new Array2DRowRealMatrix(CELLS, CELLS);
    for (int from = 0; from < CELLS; from++) {
      stay.setEntry(from, 0, NORMAL.cumulativeProbability(width * (0.5 - from) + k - shift));
      for (int to = 1; to < CELLS; to++) {
        double middle = width * (to - from) + k - shift;
        stay.setEntry(
            from,
            to,
            NORMAL.cumulativeProbability(middle + width / 2)
                - NORMAL.cumulativeProbability(middle - width / 2));
      }
    }
    RealMatrix system = new Array2DRowRealMatrix(CELLS, CELLS);
    for (int i = 0; i < CELLS; i++) {
      system.setEntry(i, i, 1);
    }
    double[] ones = new double[CELLS];
    Arrays.fill(ones, 1);
    return new LUDecomposition(system.subtract(stay))
        .getSolver()
        .solve(new ArrayRealVector(ones, false))
        .getEntry(0);
  }

  /**
   * The same for two CUSUMs, one for each sense; beyond a shift of 1 the other sense is left out.
   */
  double twoSided(double shift) {
    if (Math.abs(shift) > 1) {
      return oneSided(Math.abs(shift));
    }
    return 1 / (1 / oneSided(shift) + 1 / oneSided(-shift));
  }

  /** The two-sided CUSUM for a shift that has this mean run length where nothing shifts. */
  static CusumRunLength forShift(double shift, double runLength) {
    double limit =
        new BrentSolver(1e-4)
            .solve(
                60,
                h -> Math.log(new CusumRunLength(shift / 2, h).twoSided(0) / runLength),
                0.01,
                20);
    return new CusumRunLength(shift / 2, limit);
  }
}

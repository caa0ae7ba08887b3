package org.limbspan.bench;

import java.util.Locale;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * The known limit of detection: the mean delay of the CUSUM that is best for each step, with
 * baseline and noise known, without outliers, at one false alarm in 342 readings (3 years of
 * pairs).
 */
public final class KnownLimitBench {

  /** 0.15 percent a frame, three frames, and 0.04 percent common to a night. */
  private static final double READING_PERCENT = Math.hypot(0.15 / Math.sqrt(3), 0.04);

  private static final double FALSE_ALARM_READINGS = 342;

  /** Of shift times limit: beyond it the false alarms are rarer than e^-12. */
  private static final double MOST = 12;

  private KnownLimitBench() {}

  public static void main(String[] args) {
    System.out.println("step %   in sigmas   limit h   mean delay, readings");
    for (double percent : new double[] {0.2, 0.3, 0.5}) {
      double shift = percent / READING_PERCENT;
      double reference = shift / 2;
      double limit =
          new BracketingNthOrderBrentSolver()
              .solve(
                  200,
                  h -> Math.log(RunLength.twoSidedCusum(reference, h, 0) / FALSE_ALARM_READINGS),
                  1e-3,
                  MOST / shift);
      System.out.printf(
          Locale.ROOT,
          "%6.1f %11.2f %9.3f %12.2f%n",
          percent,
          shift,
          limit,
          RunLength.twoSidedCusum(reference, limit, shift));
    }
  }
}

package org.limbspan.cycle;

import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * How many more nights, months or readings would tell, from the uncertainty that the ones at hand
 * have reached: uncertainty falls with the square root of their number.
 */
public final class SampleSize {

  private static final NormalDistribution NORMAL = new NormalDistribution();

  private SampleSize() {}

  /**
   * More of the same kind until the standard uncertainty is {@code wanted}.
   *
   * @param have number at hand, 1 or more
   * @param uncertainty standard uncertainty reached with them
   * @param wanted standard uncertainty wanted, same unit, above 0
   * @return 0 where it is reached already
   */
  public static long moreFor(int have, double uncertainty, double wanted) {
    require("have", have, 1);
    require("uncertainty", uncertainty, 0);
    require("wanted", wanted, Double.MIN_VALUE);
    double needed = have * Math.pow(uncertainty / wanted, 2);
    return Math.max(0, (long) Math.ceil(needed - 1e-9) - have);
  }

  /**
   * More of the same kind until a departure of a given size would be found.
   *
   * @param departure size of the departure, same unit as the uncertainty, above 0
   * @param falseAlarm two-sided probability of finding one that is not there, 0 to 1 (excluded)
   * @param power probability of finding one that is there, 0 to 1 (excluded)
   */
  public static long moreToFind(
      int have, double uncertainty, double departure, double falseAlarm, double power) {
    require("departure", departure, Double.MIN_VALUE);
    requireProbability("falseAlarm", falseAlarm);
    requireProbability("power", power);
    double sigmas =
        NORMAL.inverseCumulativeProbability(1 - falseAlarm / 2)
            + NORMAL.inverseCumulativeProbability(power);
    return moreFor(have, uncertainty, departure / Math.max(sigmas, 1e-3));
  }

  private static void require(String name, double value, double least) {
    if (!(value >= least && value < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(name + " " + value + ": expected at least " + least);
    }
  }

  private static void requireProbability(String name, double value) {
    if (!(value > 0 && value < 1)) {
      throw new IllegalArgumentException(name + " " + value + ": expected above 0 and below 1");
    }
  }
}

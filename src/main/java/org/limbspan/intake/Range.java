package org.limbspan.intake;

import java.math.BigDecimal;

/** Which numbers a field takes, and how to say so. */
public final class Range {

  private enum LowerEnd {
    INCLUDED,
    EXCLUDED
  }

  private final double least;
  private final LowerEnd lowerEnd;
  private final double most;

  private Range(double least, LowerEnd lowerEnd, double most) {
    this.least = least;
    this.lowerEnd = lowerEnd;
    this.most = most;
  }

  /** From {@code least} to {@code most}, both included. */
  public static Range between(double least, double most) {
    return new Range(least, LowerEnd.INCLUDED, most);
  }

  /** Above 0, up to and including {@code most}. */
  public static Range positiveTo(double most) {
    return new Range(0, LowerEnd.EXCLUDED, most);
  }

  boolean holds(double value) {
    boolean aboveLeast = lowerEnd == LowerEnd.INCLUDED ? value >= least : value > least;
    return aboveLeast && value <= most;
  }

  /** Said after "a number" or "a whole number". */
  String words() {
    return lowerEnd == LowerEnd.INCLUDED
        ? "from " + plain(least) + " to " + plain(most)
        : "above " + plain(least) + ", at most " + plain(most);
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }
}

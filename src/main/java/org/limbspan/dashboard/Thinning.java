package org.limbspan.dashboard;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/**
 * Leaves out of a series what a screen cannot show apart, and keeps its extremes: of each of equal
 * stretches of time the least and the greatest value.
 */
final class Thinning {

  private Thinning() {}

  /**
   * The indexes to draw, in order.
   *
   * @param epochS seconds of the epoch, not falling
   * @param value the value at an index
   * @param most how many to draw at most, 2 or more
   * @return all indexes where they are no more than {@code most}
   */
  static int[] indexes(double[] epochS, IntToDoubleFunction value, int most) {
    if (most < 2) {
      throw new IllegalArgumentException("most " + most + ": expected 2 or more");
    }
    int[] kept = new int[Math.min(epochS.length, most)];
    if (epochS.length <= most) {
      Arrays.setAll(kept, i -> i);
      return kept;
    }
    int stretches = most / 2;
    double first = epochS[0];
    double width = (epochS[epochS.length - 1] - first) / stretches;
    int count = 0;
    for (int i = 0; i < epochS.length; ) {
      int stretch = stretchOf(epochS[i], first, width, stretches);
      int low = i;
      int high = i;
      for (; i < epochS.length && stretchOf(epochS[i], first, width, stretches) == stretch; i++) {
        low = value.applyAsDouble(i) < value.applyAsDouble(low) ? i : low;
        high = value.applyAsDouble(i) > value.applyAsDouble(high) ? i : high;
      }
      kept[count++] = Math.min(low, high);
      if (low != high) {
        kept[count++] = Math.max(low, high);
      }
    }
    return Arrays.copyOf(kept, count);
  }

  private static int stretchOf(double epochS, double first, double width, int stretches) {
    return width > 0 ? Math.min(stretches - 1, (int) ((epochS - first) / width)) : 0;
  }
}

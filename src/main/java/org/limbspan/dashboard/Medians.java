package org.limbspan.dashboard;

import java.util.stream.DoubleStream;

/** The median, which a few values gone astray do not move. */
final class Medians {

  private Medians() {}

  /** The middle value, or the mean of the middle two; 0 of nothing. */
  static double of(DoubleStream values) {
    double[] sorted = values.sorted().toArray();
    int middle = sorted.length / 2;
    if (sorted.length == 0) {
      return 0;
    }
    return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }
}

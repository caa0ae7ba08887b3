package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Leaves out points of a figure that would fall on others: of each cell of the size of a dot one is
 * kept. What is seen stays the same, its edges included.
 */
final class Cells {

  private static final int ACROSS = 360;
  private static final int UP = 160;

  private Cells() {}

  /** The indexes to draw, by rising {@code x}. */
  static int[] indexes(int count, IntToDoubleFunction x, IntToDoubleFunction y) {
    double[] xs = IntStream.range(0, count).mapToDouble(x).toArray();
    int[] across = places(xs, ACROSS);
    int[] up = places(IntStream.range(0, count).mapToDouble(y).toArray(), UP);
    BitSet taken = new BitSet(ACROSS * UP);
    List<Integer> kept = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int cell = across[i] * UP + up[i];
      if (!taken.get(cell)) {
        taken.set(cell);
        kept.add(i);
      }
    }
    return kept.stream()
        .sorted(Comparator.comparingDouble(i -> xs[i]))
        .mapToInt(Integer::intValue)
        .toArray();
  }

  private static int[] places(double[] values, int places) {
    double least = Arrays.stream(values).min().orElse(0);
    double width = Arrays.stream(values).max().orElse(0) - least;
    return Arrays.stream(values)
        .mapToInt(
            value -> width > 0 ? Math.min(places - 1, (int) ((value - least) / width * places)) : 0)
        .toArray();
  }
}

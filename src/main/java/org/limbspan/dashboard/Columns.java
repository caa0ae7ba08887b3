package org.limbspan.dashboard;

import java.util.List;
import java.util.function.ToDoubleFunction;

/** Numbers to draw with, without digits that no screen can show. */
final class Columns {

  private static final double UNIT = 1e5;

  private Columns() {}

  static <T> double[] of(List<T> rows, ToDoubleFunction<T> cell) {
    return rows.stream().mapToDouble(cell).map(Columns::rounded).toArray();
  }

  static double rounded(double value) {
    return Math.round(value * UNIT) / UNIT;
  }
}

package org.limbspan.dashboard;

import java.time.Instant;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** Numbers to draw with, without digits that no screen can show. */
final class Columns {

  private static final double UNIT = 1e5;

  private Columns() {}

  static <T> List<Double> of(List<T> rows, ToDoubleFunction<T> cell) {
    return rows.stream().map(row -> rounded(cell.applyAsDouble(row))).toList();
  }

  /** Instants as seconds of the epoch. */
  static <T> double[] epochS(List<T> rows, Function<T, Instant> at) {
    return rows.stream().mapToDouble(row -> Figure.epochS(at.apply(row))).toArray();
  }

  private static double rounded(double value) {
    return Math.round(value * UNIT) / UNIT;
  }
}

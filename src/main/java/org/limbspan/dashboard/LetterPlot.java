package org.limbspan.dashboard;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;

/**
 * A figure of the letter, drawn by the server: observed values with bars of k = 2 and, beside each,
 * what is computed. Units of the drawing are points.
 */
record LetterPlot(List<Dot> dots, List<Tick> across, List<Tick> up) {

  static final double LEFT = 52;
  static final double RIGHT = 476;
  static final double TOP = 20;
  static final double BOTTOM = 148;
  private static final int MOST_TICKS = 5;
  private static final int[] STEPS_OF_DAYS = {1, 2, 5, 7, 14, 28, 56, 91, 182, 365, 730, 1461};

  LetterPlot {
    dots = List.copyOf(dots);
    across = List.copyOf(across);
    up = List.copyOf(up);
  }

  /** One value: its place, the ends of its bar, and the place of what is computed. */
  record Dot(String x, String y, String low, String high, String computed) {}

  record Tick(String at, String label) {}

  /** A value to draw. */
  record Value(Instant at, double observed, double uncertainty, double computed) {}

  /** The figure of values within {@code [from, to)}. */
  static LetterPlot of(List<Value> values, Instant from, Instant to, RigTime time) {
    double low = extent(values, v -> v.observed() - 2 * v.uncertainty(), v -> v.computed(), true);
    double high = extent(values, v -> v.observed() + 2 * v.uncertainty(), v -> v.computed(), false);
    double step = step((high - low) / MOST_TICKS);
    double bottom = Math.floor(low / step) * step;
    double top = Math.ceil(high / step) * step;
    double span = Duration.between(from, to).toMillis();
    List<Dot> dots =
        values.stream()
            .map(
                v ->
                    new Dot(
                        x(Duration.between(from, v.at()).toMillis() / span),
                        y(v.observed(), bottom, top),
                        y(v.observed() - 2 * v.uncertainty(), bottom, top),
                        y(v.observed() + 2 * v.uncertainty(), bottom, top),
                        y(v.computed(), bottom, top)))
            .toList();
    return new LetterPlot(dots, across(from, to, time), up(bottom, top, step));
  }

  private static double extent(
      List<Value> values, ToDoubleFunction<Value> end, ToDoubleFunction<Value> other, boolean low) {
    DoubleStream all =
        DoubleStream.concat(values.stream().mapToDouble(end), values.stream().mapToDouble(other));
    return low ? all.min().orElse(0) : all.max().orElse(1);
  }

  /** 1, 2 or 5 times a power of ten, no less than {@code least}. */
  private static double step(double least) {
    double positive = Math.max(least, 1e-6);
    double power = Math.pow(10, Math.floor(Math.log10(positive)));
    return Arrays.stream(new double[] {1, 2, 5, 10})
        .map(of -> of * power)
        .filter(step -> step >= positive * 0.999)
        .findFirst()
        .orElse(10 * power);
  }

  private static List<Tick> up(double bottom, double top, double step) {
    int places = Math.max(0, (int) Math.ceil(-Math.log10(step) - 1e-9));
    List<Tick> ticks = new ArrayList<>();
    int count = (int) Math.round((top - bottom) / step);
    for (int k = 0; k <= count; k++) {
      double value = bottom + k * step;
      ticks.add(new Tick(y(value, bottom, top), Typeset.places(value, places)));
    }
    return ticks;
  }

  private static List<Tick> across(Instant from, Instant to, RigTime time) {
    double days = Duration.between(from, to).toMinutes() / 1440.0;
    int step =
        Arrays.stream(STEPS_OF_DAYS)
            .filter(each -> days / each <= MOST_TICKS)
            .findFirst()
            .orElse(STEPS_OF_DAYS[STEPS_OF_DAYS.length - 1]);
    List<Tick> ticks = new ArrayList<>();
    for (double day = 0; day <= days; day += step) {
      Instant at = from.plus(Duration.ofMinutes(Math.round(day * 1440)));
      ticks.add(new Tick(x(day / days), time.shortDay(at)));
    }
    return ticks;
  }

  private static String x(double share) {
    return number(LEFT + share * (RIGHT - LEFT));
  }

  private static String y(double value, double bottom, double top) {
    return number(BOTTOM - (value - bottom) / (top - bottom) * (BOTTOM - TOP));
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }
}

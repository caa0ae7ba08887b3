package org.limbspan.limb;

import java.util.Arrays;

/**
 * Whether the edges are wider along one direction than across it, as a Moon that moved during the
 * exposure shows them: the variance of an edge's width is that of the optics plus a twelfth of the
 * trail's length squared times the squared cosine of the angle between edge normal and trail.
 *
 * <p>Uneven ground, branches, roofs and the terminator widen edges too, but on one side and not by
 * that law: of opposite edges the sharper ones count, and a trail is believed only where the law
 * explains most of what the widths do round the disc.
 */
final class Trail {

  private static final int BINS = 12;
  private static final int LEAST_EDGES = 4;
  private static final int LEAST_BINS = 7;
  private static final int DIRECTIONS = 36;

  /** Share of the widths' variation that the law must explain. */
  private static final double LEAST_EXPLAINED = 0.75;

  /** A trail widens the edge at least by this factor. */
  private static final double LEAST_RATIO = 1.8;

  private final double[] angle = new double[BINS];
  private final double[] variance = new double[BINS];
  private int count;
  private double length;

  Trail(FirstOutline first) {
    for (int b = 0; b < BINS; b++) {
      double middle = Math.PI * (b + 0.5) / BINS;
      double[] widths =
          first.edges().stream()
              .filter(e -> Math.abs(e.shift()) < 3 + 1.5 * e.sigma())
              .filter(e -> near(first.annulus().angle(e.sector()), middle))
              .mapToDouble(FirstLook.Edge::sigma)
              .sorted()
              .toArray();
      if (widths.length >= LEAST_EDGES) {
        angle[count] = middle;
        variance[count++] = Math.pow(widths[widths.length / 4], 2);
      }
    }
    if (count >= LEAST_BINS) {
      search();
    }
  }

  /** Length of the trail in pixels, 0 where the widths show none. */
  double lengthPx() {
    return length;
  }

  private static boolean near(double angle, double middle) {
    return Math.abs(Math.cos(angle - middle)) > Math.cos(Math.PI / BINS / 2);
  }

  private void search() {
    double[] used = Arrays.copyOf(variance, count);
    double spread = absoluteSpread(used);
    for (int d = 0; d < DIRECTIONS; d++) {
      double direction = Math.PI * d / DIRECTIONS;
      double[] law = new double[count];
      for (int i = 0; i < count; i++) {
        law[i] = Math.pow(Math.cos(angle[i] - direction), 2);
      }
      double slope = slope(law, used);
      double base = median(rest(law, used, slope));
      double left = absoluteSpread(rest(law, used, slope));
      boolean wide = slope + base > LEAST_RATIO * LEAST_RATIO * Math.max(0.1, base);
      if (wide && left < (1 - LEAST_EXPLAINED) * spread) {
        length = Math.max(length, Math.sqrt(12 * slope));
      }
    }
  }

  /** Theil and Sen's slope: the median over all pairs. */
  private static double slope(double[] law, double[] values) {
    double[] slopes = new double[law.length * law.length];
    int pairs = 0;
    for (int i = 0; i < law.length; i++) {
      for (int j = 0; j < i; j++) {
        if (Math.abs(law[i] - law[j]) > 0.15) {
          slopes[pairs++] = (values[i] - values[j]) / (law[i] - law[j]);
        }
      }
    }
    return pairs == 0 ? 0 : median(Arrays.copyOf(slopes, pairs));
  }

  private static double[] rest(double[] law, double[] values, double slope) {
    double[] rest = new double[law.length];
    for (int i = 0; i < law.length; i++) {
      rest[i] = values[i] - slope * law[i];
    }
    return rest;
  }

  private static double absoluteSpread(double[] values) {
    double middle = median(values);
    double[] sizes = new double[values.length];
    for (int i = 0; i < sizes.length; i++) {
      sizes[i] = Math.abs(values[i] - middle);
    }
    return Math.max(0.02, median(sizes));
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }
}

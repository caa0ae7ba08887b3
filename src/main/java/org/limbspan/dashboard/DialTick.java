package org.limbspan.dashboard;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * A stroke of a scale in degrees, in millimetres of the printed card.
 *
 * @param label empty but at every tenth degree
 */
record DialTick(
    String x1, String y1, String x2, String y2, String label, String labelX, String labelY) {

  static final double RADIUS_MM = 82;
  static final double QUADRANT_RADIUS_MM = 112;
  private static final double CENTRE_MM = 90;
  private static final double PIVOT_X_MM = 132;
  private static final double PIVOT_Y_MM = 22;

  /** A full circle, 0 at the top, clockwise as bearings count. */
  static List<DialTick> bearings() {
    return IntStream.range(0, 360)
        .mapToObj(
            deg ->
                tick(
                    deg,
                    CENTRE_MM,
                    CENTRE_MM,
                    Math.sin(Math.toRadians(deg)),
                    -Math.cos(Math.toRadians(deg)),
                    RADIUS_MM))
        .toList();
  }

  /**
   * A quarter circle below a sight edge, its plumb line hung from the far end: 0 straight below, 90
   * back along the edge.
   */
  static List<DialTick> altitudes() {
    return IntStream.rangeClosed(0, 90)
        .mapToObj(
            deg ->
                tick(
                    deg,
                    PIVOT_X_MM,
                    PIVOT_Y_MM,
                    -Math.sin(Math.toRadians(deg)),
                    Math.cos(Math.toRadians(deg)),
                    QUADRANT_RADIUS_MM))
        .toList();
  }

  private static DialTick tick(
      int deg, double x, double y, double right, double down, double radius) {
    double inner = radius - (deg % 10 == 0 ? 7 : deg % 5 == 0 ? 5 : 3);
    double text = radius - 10.5;
    return new DialTick(
        mm(x + radius * right),
        mm(y + radius * down),
        mm(x + inner * right),
        mm(y + inner * down),
        deg % 10 == 0 ? String.valueOf(deg) : "",
        mm(x + text * right),
        mm(y + text * down + 1.2));
  }

  private static String mm(double value) {
    return String.format(Locale.ROOT, "%.3f", value);
  }
}

package org.limbspan.sky;

import java.util.Comparator;
import java.util.List;

/**
 * What stands up over the sea horizon around a site, hills, roofs and trees, as its owner measured
 * it: the altitude of its upper edge at some azimuths, joined by straight lines all around the
 * compass. Two points of one azimuth make an upright edge, such as that of a wall; they keep the
 * order in which they were given, so that {@code 120 5, 120 30, 150 30, 150 5} is a wall of 30
 * degrees from 120 to 150.
 *
 * <p>Altitudes are apparent, as sighted from the lens. The azimuth of the Moon's centre counts;
 * over the width of the disc, half a degree, the line is taken as level.
 *
 * @param points at least two, from 0 to 360 degrees of azimuth; sorted by it
 */
public record HorizonLine(List<Point> points) {

  public static final int FEWEST_POINTS = 2;
  public static final int MOST_POINTS = 720;

  /**
   * A point of the upper edge.
   *
   * @param azimuthDeg from north through east, 0 to 360
   * @param altitudeDeg above the sea horizon, 0 to 90
   */
  public record Point(double azimuthDeg, double altitudeDeg) {

    public Point {
      require("azimuthDeg", azimuthDeg, 360);
      require("altitudeDeg", altitudeDeg, 90);
    }

    private static void require(String name, double value, double most) {
      if (!(value >= 0 && value <= most)) {
        throw new IllegalArgumentException(
            "%s %s: expected 0 to %s degrees".formatted(name, value, most));
      }
    }
  }

  /** How much of the disc stands clear of the line. */
  public enum View {
    CLEAR,
    PARTLY_HIDDEN,
    HIDDEN
  }

  public HorizonLine {
    if (points.size() < FEWEST_POINTS || points.size() > MOST_POINTS) {
      throw new IllegalArgumentException(
          "points %d: expected %d to %d".formatted(points.size(), FEWEST_POINTS, MOST_POINTS));
    }
    points = points.stream().sorted(Comparator.comparingDouble(Point::azimuthDeg)).toList();
  }

  /**
   * Altitude of the line; on an upright edge its top.
   *
   * @param azimuthDeg from north through east, 0 to 360
   * @throws IllegalArgumentException if it is beyond
   */
  public double altitudeDeg(double azimuthDeg) {
    double soughtDeg = new Point(azimuthDeg, 0).azimuthDeg() % 360;
    double highestDeg = 0;
    for (int i = 0; i <= points.size(); i++) {
      double startDeg = cornerAzimuthDeg(i - 1);
      double endDeg = cornerAzimuthDeg(i);
      if (startDeg <= soughtDeg && soughtDeg <= endDeg) {
        double from = cornerAltitudeDeg(i - 1);
        double to = cornerAltitudeDeg(i);
        double here =
            endDeg > startDeg
                ? from + (soughtDeg - startDeg) / (endDeg - startDeg) * (to - from)
                : Math.max(from, to);
        highestDeg = Math.max(highestDeg, here);
      }
    }
    return highestDeg;
  }

  /** Azimuth of a point; the one before the first is the last, a turn earlier, and so on. */
  private double cornerAzimuthDeg(int i) {
    int turns = Math.floorDiv(i, points.size());
    return points.get(Math.floorMod(i, points.size())).azimuthDeg() + 360.0 * turns;
  }

  private double cornerAltitudeDeg(int i) {
    return points.get(Math.floorMod(i, points.size())).altitudeDeg();
  }

  /** How much of the disc is seen; refraction and its flattening count. */
  public View of(MoonSight sight) {
    double lineDeg = altitudeDeg(sight.azimuthDeg());
    double radiusDeg = sight.verticalDiameterArcmin() / 120;
    if (sight.apparentAltitudeDeg() - radiusDeg >= lineDeg) {
      return View.CLEAR;
    }
    return sight.apparentAltitudeDeg() + radiusDeg > lineDeg ? View.PARTLY_HIDDEN : View.HIDDEN;
  }

  /** Whether the whole disc stands over the line. */
  public boolean isClear(MoonSight sight) {
    return of(sight) == View.CLEAR;
  }
}

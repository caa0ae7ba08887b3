package org.limbspan.scale;

/**
 * The angle between two directions given by longitude and latitude on a sphere: right ascension and
 * declination, or azimuth and altitude.
 *
 * <p>Definition: atan2 of the length of the cross product over the dot product of the two unit
 * vectors, written out in the angles. Exact to rounding at any separation, where the arc cosine of
 * the dot product loses half of its digits for near directions.
 *
 * <p>Source: T. Vincenty, Survey Review 23 (1975) 88, for a sphere.
 */
public final class GreatCircle {

  private GreatCircle() {}

  /**
   * The angle in degrees, 0 to 180.
   *
   * @param longitudeADeg any finite angle; the same for {@code longitudeBDeg}
   * @param latitudeADeg -90 to 90; the same for {@code latitudeBDeg}
   */
  public static double separationDeg(
      double longitudeADeg, double latitudeADeg, double longitudeBDeg, double latitudeBDeg) {
    requireLongitude("longitudeADeg", longitudeADeg);
    requireLatitude("latitudeADeg", latitudeADeg);
    requireLongitude("longitudeBDeg", longitudeBDeg);
    requireLatitude("latitudeBDeg", latitudeBDeg);
    double a = Math.toRadians(latitudeADeg);
    double b = Math.toRadians(latitudeBDeg);
    double between = Math.toRadians(longitudeBDeg - longitudeADeg);
    double halfBetween = Math.sin(between / 2);
    // cos a sin b - sin a cos b cos(between), without the difference of near numbers
    double along = Math.sin(b - a) + 2 * Math.sin(a) * Math.cos(b) * halfBetween * halfBetween;
    double across = Math.cos(b) * Math.sin(between);
    double dot = Math.sin(a) * Math.sin(b) + Math.cos(a) * Math.cos(b) * Math.cos(between);
    return Math.toDegrees(Math.atan2(Math.hypot(across, along), dot));
  }

  private static void requireLongitude(String name, double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " " + value + ": expected a finite angle");
    }
  }

  private static void requireLatitude(String name, double value) {
    if (!(value >= -90 && value <= 90)) {
      throw new IllegalArgumentException(name + " " + value + ": expected -90 to 90");
    }
  }
}

package org.limbspan.sky;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** The Moon's disc: its size and its phase. */
final class Disc {

  /** Mean radius of the Moon in km. Source: IAU Working Group on Cartographic Coordinates, 2015. */
  static final double MOON_RADIUS_KM = 1737.4;

  private Disc() {}

  /** Angular diameter of the Moon without air, 2 asin(R / d), in arcminutes. */
  static double diameterArcmin(double distanceKm) {
    return 60 * Math.toDegrees(2 * Math.asin(MOON_RADIUS_KM / distanceKm));
  }

  /**
   * Sunlit part of the disc, (1 + cos i) / 2, where i is the angle at the Moon between observer and
   * Sun.
   *
   * <p>Source: J. Meeus, Astronomical Algorithms (2nd ed. 1998), ch. 48.
   *
   * @param toMoon from the observer to the Moon
   * @param toSun from the observer to the Sun, same unit
   */
  static double illuminatedFraction(Vector3D toMoon, Vector3D toSun) {
    double phaseAngleRad = Vector3D.angle(toMoon.negate(), toSun.subtract(toMoon));
    return (1 + Math.cos(phaseAngleRad)) / 2;
  }
}

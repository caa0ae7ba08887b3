package org.limbspan.sky;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** The Moon over one horizon as a function of time (days of TDB since J2000.0), for searches. */
record MoonTrack(Ephemeris ephemeris, AttitudeTable attitudes, Horizon horizon) {

  /**
   * Refraction at the horizon by which almanacs reckon rise and set, 34 arcminutes.
   *
   * <p>Source: Explanatory Supplement to the Astronomical Almanac; J. Meeus, Astronomical
   * Algorithms (2nd ed. 1998), ch. 15.
   */
  private static final double HORIZONTAL_REFRACTION_DEG = 34.0 / 60;

  /** Sine of the altitude of the Moon's centre: smooth, also through the zenith. */
  double sineOfAltitude(double tdbDays) {
    return toMoon(tdbDays).normalize().dotProduct(horizon.up());
  }

  /** Apparent altitude of the upper limb near the horizon, degrees; 0 at rise and set. */
  double upperLimbDeg(double tdbDays) {
    Vector3D toMoon = toMoon(tdbDays);
    double semidiameterDeg = Disc.diameterArcmin(toMoon.getNorm()) / 120;
    return horizon.altitudeDeg(toMoon) + semidiameterDeg + HORIZONTAL_REFRACTION_DEG;
  }

  private Vector3D toMoon(double tdbDays) {
    return horizon.toBody(attitudes.toEarth(ephemeris.moonKm(tdbDays), tdbDays));
  }
}

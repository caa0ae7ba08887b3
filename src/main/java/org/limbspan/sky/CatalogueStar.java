package org.limbspan.sky;

import java.time.Duration;
import java.time.Instant;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A star as catalogues list it: equator and equinox of J2000.0 (or the ICRS, 0.02 arcseconds from
 * it), epoch J2000.0.
 *
 * @param rightAscensionDeg 0 to 360 (360 excluded)
 * @param declinationDeg -90 to 90
 * @param motionEastMasPerYear proper motion in right ascension times the cosine of the declination,
 *     -20000 to 20000, milliarcseconds a Julian year
 * @param motionNorthMasPerYear proper motion in declination, the same
 */
public record CatalogueStar(
    double rightAscensionDeg,
    double declinationDeg,
    double motionEastMasPerYear,
    double motionNorthMasPerYear) {

  /** Twice the fastest star known (10.4 arcseconds a year; common knowledge, no source). */
  private static final double MOST_MAS_PER_YEAR = 20_000;

  /** 2000 January 1, 12:00 TT, as UTC; a minute more or less moves nothing. */
  private static final Instant J2000 = Instant.parse("2000-01-01T11:58:56Z");

  private static final double JULIAN_YEAR_S = 365.25 * 86400;
  private static final double MAS = Math.toRadians(1 / 3.6e6);

  public CatalogueStar {
    if (!(rightAscensionDeg >= 0 && rightAscensionDeg < 360)) {
      throw new IllegalArgumentException(
          "rightAscensionDeg " + rightAscensionDeg + ": expected 0 to 360, 360 excluded");
    }
    if (!(declinationDeg >= -90 && declinationDeg <= 90)) {
      throw new IllegalArgumentException(
          "declinationDeg " + declinationDeg + ": expected -90 to 90");
    }
    requireMotion("motionEastMasPerYear", motionEastMasPerYear);
    requireMotion("motionNorthMasPerYear", motionNorthMasPerYear);
  }

  /**
   * Its direction in the axes of J2000.0 at an instant, a unit vector: straight uniform motion at a
   * right angle to the line of sight of J2000.0.
   *
   * <p>Source: ESA SP-1200, The Hipparcos and Tycho Catalogues, vol. 1, 1.2.8, without the radial
   * velocity and the parallax (below 0.8 arcseconds for any star, 0.1 for most bright ones).
   */
  Vector3D directionAt(Instant at) {
    double years = Duration.between(J2000, at).toSeconds() / JULIAN_YEAR_S;
    Vector3D start =
        new Vector3D(Math.toRadians(rightAscensionDeg), Math.toRadians(declinationDeg));
    double ra = start.getAlpha();
    Vector3D east = new Vector3D(-Math.sin(ra), Math.cos(ra), 0);
    Vector3D north = start.crossProduct(east);
    return new Vector3D(
            1,
            start,
            years * MAS * motionEastMasPerYear,
            east,
            years * MAS * motionNorthMasPerYear,
            north)
        .normalize();
  }

  private static void requireMotion(String name, double value) {
    if (!(Math.abs(value) <= MOST_MAS_PER_YEAR)) {
      throw new IllegalArgumentException(
          name + " " + value + ": expected -" + MOST_MAS_PER_YEAR + " to " + MOST_MAS_PER_YEAR);
    }
  }
}

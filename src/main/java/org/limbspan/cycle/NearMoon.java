package org.limbspan.cycle;

import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;

/**
 * The geometry of the near-Moon hypothesis: flat ground, mapped azimuthally equidistant about the
 * north pole with the globe's distance to the pole as radius and the longitude as angle; the Moon
 * some thousands of kilometres above the point where it stands in the zenith.
 *
 * <p>Common practice, no source; height by common practice 3000 statute miles.
 */
public final class NearMoon {

  /** 3000 statute miles of 1.609344 km. */
  public static final double HEIGHT_KM = 3000 * 1.609344;

  /** Mean radius of the Earth, km (IUGG; H. Moritz, Geodetic Reference System 1980). */
  static final double EARTH_RADIUS_KM = 6371.0088;

  private NearMoon() {}

  /**
   * Distance of the Moon's centre from the observer under this hypothesis, km.
   *
   * @param heightKm of the Moon above the ground, above 0
   */
  public static double distanceKm(MoonSight sight, Site site, double heightKm) {
    return Math.hypot(groundKm(sight, site), heightKm);
  }

  /** From the observer to where the Moon stands in the zenith, on the map, km. */
  static double groundKm(MoonSight sight, Site site) {
    return groundKm(
        site.latitudeDeg(),
        sight.sublunarLatitudeDeg(),
        site.longitudeDeg() - sight.sublunarLongitudeDeg());
  }

  /** Straight distance of two places on the map, km. */
  static double groundKm(double latitudeDeg, double otherLatitudeDeg, double longitudesApartDeg) {
    double own = EARTH_RADIUS_KM * Math.toRadians(90 - latitudeDeg);
    double other = EARTH_RADIUS_KM * Math.toRadians(90 - otherLatitudeDeg);
    double half = Math.sin(Math.toRadians(longitudesApartDeg) / 2);
    return Math.hypot(own - other, 2 * half * Math.sqrt(own * other));
  }
}

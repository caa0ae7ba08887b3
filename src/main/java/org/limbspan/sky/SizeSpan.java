package org.limbspan.sky;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Between which sizes a day carries the Moon for a site: small on the horizon, where the site is
 * about as far from it as the Earth's centre is, large at upper transit, where the site is nearest.
 *
 * <p>Definition: diameters at the distances sqrt(r^2 - p^2) and sqrt(r^2 + p^2 - 2 r p cos(f - d)),
 * with r the Moon's geocentric distance and d its declination, both held as they are at the instant
 * of the sight, p the site's geocentric distance and f its geocentric latitude. Without refraction.
 *
 * <p>Accuracy: the upper bound is exact at transit; the lower one neglects the angle between plumb
 * line and radius, 0.002 arcminutes. Where the Moon does not rise or does not set on that day, the
 * two are bounds that it does not reach.
 *
 * @param onHorizonArcmin diameter with the Moon's centre on the horizon
 * @param atTransitArcmin diameter at upper transit
 */
public record SizeSpan(double onHorizonArcmin, double atTransitArcmin) {

  /** The span of the day about a sight; the site need not be that of the sight. */
  public static SizeSpan of(MoonSight sight, Site site) {
    Vector3D position = Horizon.of(site).positionKm();
    double siteKm = position.getNorm();
    double moonKm = sight.geocentricDistanceKm();
    double apartRad = position.getDelta() - Math.toRadians(sight.sublunarLatitudeDeg());
    double horizonKm = Math.sqrt(moonKm * moonKm - siteKm * siteKm);
    double transitKm =
        Math.sqrt(moonKm * moonKm + siteKm * siteKm - 2 * moonKm * siteKm * Math.cos(apartRad));
    return new SizeSpan(Disc.diameterArcmin(horizonKm), Disc.diameterArcmin(transitKm));
  }
}

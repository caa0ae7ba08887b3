package org.limbspan.cycle;

import java.util.List;
import org.limbspan.sky.Site;

/**
 * How much nearer, and so bigger, the Moon is for an observer on the globe than for its centre,
 * from altitudes alone.
 *
 * <p>With the parallax q = (Earth's equatorial radius / distance of the centres) and the site's
 * radius r in equatorial radii, the distance from the site over that from the centre is sqrt(1 -
 * (rq cos h)^2) - rq sin h; h is the altitude above the geocentric horizon. Exact for a sphere of
 * any size; the site's radius and vertical are those of the WGS 84 ellipsoid.
 */
final class ParallaxLaw {

  /** WGS 84 (NGA.STND.0036). */
  static final double EQUATORIAL_RADIUS_KM = 6378.137;

  private static final double FLATTENING = 1 / 298.257223563;

  /** Prior of the parallax: normal around 0, 1/33 wide; the Moon's is near 1/60. */
  static final double PRIOR_PRECISION = 33.0 * 33;

  private static final double NEAREST = 0.9;

  private static final ParallaxLaw NONE = new ParallaxLaw(1, new double[0]);

  private final double siteRadius;
  private final double[] sinAltitude;

  private ParallaxLaw(double siteRadius, double[] sinAltitude) {
    this.siteRadius = siteRadius;
    this.sinAltitude = sinAltitude;
  }

  /** No observer: the size as from the centre. */
  static ParallaxLaw none() {
    return NONE;
  }

  static ParallaxLaw of(List<Observation> observations, Site site, AltitudeSource source) {
    double latitude = Math.toRadians(site.latitudeDeg());
    double axisRatio2 = (1 - FLATTENING) * (1 - FLATTENING);
    double sin = Math.sin(latitude);
    double cos = Math.cos(latitude);
    double curvature = 1 / Math.sqrt(cos * cos + axisRatio2 * sin * sin);
    double height = site.elevationM() / (1000 * EQUATORIAL_RADIUS_KM);
    double equatorial = (curvature + height) * cos;
    double polar = (axisRatio2 * curvature + height) * sin;
    double tilt = latitude - Math.atan2(polar, equatorial);
    double[] sines = new double[observations.size()];
    for (int i = 0; i < sines.length; i++) {
      sines[i] = geocentricSine(observations.get(i), source, tilt);
    }
    return new ParallaxLaw(Math.hypot(equatorial, polar), sines);
  }

  private static double geocentricSine(Observation o, AltitudeSource source, double tilt) {
    double altitude = Math.toRadians(source.altitudeDeg(o));
    double azimuth = Math.toRadians(o.sight().azimuthDeg());
    return Math.sin(altitude) * Math.cos(tilt)
        - Math.cos(altitude) * Math.cos(azimuth) * Math.sin(tilt);
  }

  boolean isPresent() {
    return sinAltitude.length > 0;
  }

  /** ln of the size from the site over that from the centre, reading {@code i}. */
  double lnGain(int i, double parallax) {
    return -Math.log(nearness(i, parallax));
  }

  /** A search may stray; an observer inside the Moon's orbit is as near as it gets. */
  private double leverage(double parallax) {
    return Math.max(-NEAREST, Math.min(NEAREST, siteRadius * parallax));
  }

  /** Derivative of {@link #lnGain} by the parallax. */
  double slope(int i, double parallax) {
    double rq = leverage(parallax);
    double cos2 = 1 - sinAltitude[i] * sinAltitude[i];
    double root = Math.sqrt(1 - rq * rq * cos2);
    return siteRadius * (sinAltitude[i] + rq * cos2 / root) / nearness(i, parallax);
  }

  private double nearness(int i, double parallax) {
    double rq = leverage(parallax);
    double cos2 = 1 - sinAltitude[i] * sinAltitude[i];
    return Math.sqrt(1 - rq * rq * cos2) - rq * sinAltitude[i];
  }
}

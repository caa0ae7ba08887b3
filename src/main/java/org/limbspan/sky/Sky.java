package org.limbspan.sky;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.orekit.time.AbsoluteDate;
import org.orekit.utils.Constants;

/**
 * The computed sky: where the Moon, the Sun and given stars are. Immutable; safe for use by any
 * number of threads.
 *
 * <p>Method: geometric positions of JPL DE405; the Sun's with its light time; the Earth's attitude
 * by the IERS Conventions of 1996 with UT1 = UTC and without polar motion; sites on the WGS 84
 * ellipsoid; refraction as in {@link Refraction}.
 *
 * <p>Distances are geometric, as almanacs give them. Tables of the way of the light in the frame of
 * the solar system (JPL Horizons' range) differ by up to 41 km, because the Earth moves 38 km
 * meanwhile; an observer moves with it, and for him aberration takes that away again: the size he
 * sees is that of the geometric distance.
 *
 * <p>Accuracy: distance from the site 0.6 km (UT1 0.42 km, light time 0.09 km), that is 0.0002
 * percent; direction 0.005 degrees, besides refraction. Left out: light time of the Moon (0.7
 * arcseconds), diurnal aberration (0.3 arcseconds), the heights of the lunar limb (up to 2
 * arcseconds). After the last announced leap second UT1 may part from the UTC assumed here; a
 * second of it is 0.004 degrees.
 */
public final class Sky {

  /**
   * The file reaches so much further than what is answered, to find the neighbours of an instant.
   */
  private static final int MARGIN_DAYS = 29;

  private static final double UNIX_EPOCH_JD = 2440587.5;

  /** Light time of one astronomical unit, 499 s, in days; the Sun's varies by 8 s about it. */
  private static final double SUN_LIGHT_DAYS = 499.0 / 86400;

  private static final double LIGHT_KM_PER_DAY =
      Constants.SPEED_OF_LIGHT / 1000 * Constants.JULIAN_DAY;

  private final Ephemeris ephemeris;
  private final Times times = new Times();
  private final EarthRotation rotation = new EarthRotation(times.scales());
  private final Apsides apsides;
  private final Instant from;
  private final Instant to;

  private Sky(Ephemeris ephemeris) {
    this.ephemeris = ephemeris;
    this.apsides = new Apsides(ephemeris, times);
    this.from = ofJulianDate(ephemeris.firstJd() + MARGIN_DAYS);
    this.to = ofJulianDate(ephemeris.lastJd() - MARGIN_DAYS);
  }

  /** The sky of an ephemeris. */
  public static Sky of(Ephemeris ephemeris) {
    return new Sky(ephemeris);
  }

  /** First instant that is answered. */
  public Instant ephemerisFrom() {
    return from;
  }

  /** First instant that is answered no more. */
  public Instant ephemerisTo() {
    return to;
  }

  /**
   * The Moon seen from a site in its mean air, see {@link Atmosphere#meanAt}.
   *
   * @throws IllegalArgumentException if {@code at} lies outside the ephemeris
   */
  public MoonSight moonAt(Instant at, Site site) {
    return moonAt(at, site, Atmosphere.meanAt(site.elevationM()));
  }

  /**
   * The Moon seen from a site in given air.
   *
   * @throws IllegalArgumentException if {@code at} lies outside the ephemeris
   */
  public MoonSight moonAt(Instant at, Site site, Atmosphere air) {
    require("at", at);
    return sight(at, site, air);
  }

  private MoonSight sight(Instant at, Site site, Atmosphere air) {
    AbsoluteDate date = times.date(at);
    double tdbDays = times.tdbDays(date);
    Rotation toEarth = rotation.at(date).toEarth();
    Vector3D moon = toEarth.applyTo(ephemeris.moonKm(tdbDays));
    Vector3D sun = toEarth.applyTo(ephemeris.sunKm(tdbDays - SUN_LIGHT_DAYS));
    Horizon horizon = Horizon.of(site);
    Vector3D toMoon = horizon.toBody(moon);
    Vector3D toSun = horizon.toBody(sun);
    double altitudeDeg = horizon.altitudeDeg(toMoon);
    double diameterArcmin = Disc.diameterArcmin(toMoon.getNorm());
    return new MoonSight(
        at,
        moon.getNorm(),
        toMoon.getNorm(),
        diameterArcmin,
        diameterArcmin * Refraction.verticalFactor(altitudeDeg, diameterArcmin, air),
        altitudeDeg,
        Refraction.apparentAltitudeDeg(altitudeDeg, air),
        horizon.azimuthDeg(toMoon),
        Disc.illuminatedFraction(toMoon, toSun),
        Math.toDegrees(Vector3D.angle(toMoon, toSun)),
        horizon.altitudeDeg(toSun),
        Math.toDegrees(moon.getDelta()),
        Math.toDegrees(moon.getAlpha()));
  }

  /**
   * Where the middle of the Moon's bright limb stands as seen from a site: degrees
   * counter-clockwise from the direction along the horizon to the right, 90 being towards the
   * zenith; -180 to 180. Without refraction, which near the horizon turns it by the flattening.
   * Accuracy: 0.01 degrees over the sine of the phase angle.
   *
   * @throws IllegalArgumentException if {@code at} lies outside the ephemeris
   */
  public double brightLimbDeg(Instant at, Site site) {
    require("at", at);
    AbsoluteDate date = times.date(at);
    double tdbDays = times.tdbDays(date);
    Rotation toEarth = rotation.at(date).toEarth();
    Vector3D moon = toEarth.applyTo(ephemeris.moonKm(tdbDays));
    Vector3D sun = toEarth.applyTo(ephemeris.sunKm(tdbDays - SUN_LIGHT_DAYS));
    Horizon horizon = Horizon.of(site);
    return horizon.brightLimbDeg(horizon.toBody(moon), sun.subtract(moon));
  }

  /**
   * A star seen from a site in its mean air, see {@link Atmosphere#meanAt}: proper motion, the
   * yearly aberration (which widens and narrows angles by up to 0.01 percent), the Earth's attitude
   * and refraction. Left out: parallax, the bending of light by the Sun, and what the Moon's place
   * leaves out. Accuracy: as of the Moon's direction; the angle between two stars 0.01 arcseconds a
   * degree, besides what is left out and refraction.
   *
   * @throws IllegalArgumentException if {@code at} lies outside the ephemeris
   */
  public StarSight starAt(Instant at, Site site, CatalogueStar star) {
    require("at", at);
    AbsoluteDate date = times.date(at);
    Vector3D aberrated =
        new Vector3D(1, star.directionAt(at), 1, earthVelocityOverLight(times.tdbDays(date)));
    Vector3D toStar = rotation.at(date).toEarth().applyTo(aberrated);
    Horizon horizon = Horizon.of(site);
    double altitudeDeg = horizon.altitudeDeg(toStar);
    return new StarSight(
        altitudeDeg,
        Refraction.apparentStarAltitudeDeg(altitudeDeg, Atmosphere.meanAt(site.elevationM())),
        horizon.azimuthDeg(toStar));
  }

  /** About the Sun; about the centre of the solar system it differs by 0.01 arcseconds. */
  private Vector3D earthVelocityOverLight(double tdbDays) {
    Vector3D kmInADay = ephemeris.sunKm(tdbDays - 0.5).subtract(ephemeris.sunKm(tdbDays + 0.5));
    return kmInADay.scalarMultiply(1 / LIGHT_KM_PER_DAY);
  }

  /**
   * Distance between the centres of Earth and Moon, km; geometric, without light time.
   *
   * @throws IllegalArgumentException if {@code at} lies outside the ephemeris
   */
  public double geocentricDistanceKm(Instant at) {
    require("at", at);
    return ephemeris.moonKm(times.tdbDays(at)).getNorm();
  }

  /**
   * All perigees and apogees in {@code [from, to)}, in order of time, to the second.
   *
   * @throws IllegalArgumentException if {@code from} lies after {@code to}, or either outside the
   *     ephemeris
   */
  public List<Apsis> apsides(Instant from, Instant to) {
    requireInterval(from, to);
    return apsides.between(from, to);
  }

  /**
   * Days since the nearest perigee; negative before it. Between -14.3 and 14.3.
   *
   * @throws IllegalArgumentException if {@code at} lies outside the ephemeris
   */
  public double daysFromPerigee(Instant at) {
    require("at", at);
    return apsides.daysFromPerigee(at);
  }

  /**
   * All passes over a site with their culmination in {@code [from, to)}, in order of time. Instants
   * are good to a second or two for the horizon as defined, see {@link Pass}; real refraction moves
   * rise and set by minutes.
   *
   * @throws IllegalArgumentException if {@code from} lies after {@code to}, or either outside the
   *     ephemeris
   */
  public List<Pass> passes(Instant from, Instant to, Site site) {
    requireInterval(from, to);
    AttitudeTable attitudes =
        new AttitudeTable(
            rotation,
            times,
            times.tdbDays(from) - Passes.NEIGHBOUR_DAYS,
            times.tdbDays(to) + Passes.NEIGHBOUR_DAYS);
    Atmosphere air = Atmosphere.meanAt(site.elevationM());
    MoonTrack track = new MoonTrack(ephemeris, attitudes, Horizon.of(site));
    return new Passes(track, times, at -> sight(at, site, air)).between(from, to);
  }

  private void requireInterval(Instant from, Instant to) {
    requireEdge("from", from);
    requireEdge("to", to);
    if (from.isAfter(to)) {
      throw new IllegalArgumentException(
          "from %s: expected no later than to, %s".formatted(from, to));
    }
  }

  private void requireEdge(String name, Instant at) {
    if (at.isBefore(from) || at.isAfter(to)) {
      throw new IllegalArgumentException(
          "%s %s: expected from %s to %s".formatted(name, at, from, to));
    }
  }

  private void require(String name, Instant at) {
    if (at.isBefore(from) || !at.isBefore(to)) {
      throw new IllegalArgumentException(
          "%s %s: expected from %s to before %s".formatted(name, at, from, to));
    }
  }

  private static Instant ofJulianDate(double jd) {
    return Instant.EPOCH.plus(Duration.ofSeconds(Math.round((jd - UNIX_EPOCH_JD) * 86400)));
  }
}

package org.limbspan.cycle;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;

/**
 * Numbers the passes of the Moon over a site: one number from lower transit to lower transit.
 *
 * <p>The mean Moon's hour angle counts the turns; the true hour angle never strays from it by more
 * than about 12 degrees (equation of the centre 6.3, evection 1.3, variation 0.7, reduction to the
 * equator 2.5, rounded up), so that rounding their difference gives one number for one pass, from
 * the sight alone and whatever other readings there are.
 *
 * <p>Source: mean longitude of the Moon and mean sidereal time after J. Meeus, Astronomical
 * Algorithms, 2nd ed., (47.1) and (12.4), constants from memory, linear terms only; good to 0.2
 * degrees from 1980 to 2060, where 160 would do.
 */
public final class PassNumber {

  private static final Instant J2000 = Instant.parse("2000-01-01T12:00:00Z");
  private static final double SECONDS_PER_DAY = 86400;
  private static final double SIDEREAL_TIME_AT_EPOCH_DEG = 280.46061837;
  private static final double SIDEREAL_RATE_DEG_PER_DAY = 360.98564736629;
  private static final double MOON_LONGITUDE_AT_EPOCH_DEG = 218.3164477;
  private static final double MOON_RATE_DEG_PER_DAY = 13.17639648;
  private static final double HOUR_ANGLE_RATE_DEG_PER_SECOND =
      (SIDEREAL_RATE_DEG_PER_DAY - MOON_RATE_DEG_PER_DAY) / SECONDS_PER_DAY;

  private PassNumber() {}

  /** The number of the pass to which this sight from {@code site} belongs. */
  public static long of(MoonSight sight, Site site) {
    double days = J2000.until(sight.at(), ChronoUnit.MILLIS) / (1000 * SECONDS_PER_DAY);
    double turnedDeg =
        SIDEREAL_TIME_AT_EPOCH_DEG
            - MOON_LONGITUDE_AT_EPOCH_DEG
            + (SIDEREAL_RATE_DEG_PER_DAY - MOON_RATE_DEG_PER_DAY) * days
            + site.longitudeDeg();
    return Math.round((turnedDeg - hourAngleDeg(sight, site)) / 360);
  }

  /** The Moon's geocentric hour angle, -180 to 180, positive after transit. */
  static double hourAngleDeg(MoonSight sight, Site site) {
    return Math.IEEEremainder(site.longitudeDeg() - sight.sublunarLongitudeDeg(), 360);
  }

  /** The upper transit nearest to this sight, by the Moon's mean motion; good to 15 minutes. */
  static Instant transitNear(MoonSight sight, Site site) {
    double seconds = hourAngleDeg(sight, site) / HOUR_ANGLE_RATE_DEG_PER_SECOND;
    return sight.at().minusMillis(Math.round(seconds * 1000));
  }
}

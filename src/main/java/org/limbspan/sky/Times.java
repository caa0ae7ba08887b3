package org.limbspan.sky;

import java.time.Instant;
import java.util.List;
import org.orekit.time.AbsoluteDate;
import org.orekit.time.TDBScale;
import org.orekit.time.TimeScales;
import org.orekit.time.UTCScale;
import org.orekit.utils.Constants;

/**
 * Between the time scales: UTC outside, TDB for the ephemeris. Orekit's scales, with the leap
 * seconds by hand: no data files, no default data context. UT1 is taken as UTC: they differ by less
 * than 0.9 s, in which the Earth turns by 0.004 degrees. An inserted second, which {@link Instant}
 * cannot name, answers with the first second of the next day.
 */
final class Times {

  private final TimeScales scales;
  private final UTCScale utc;
  private final TDBScale tdb;
  private final AbsoluteDate j2000;
  private final AbsoluteDate utcOrigin;
  private final Instant utcOriginInstant = Instant.parse("2000-01-01T00:00:00Z");

  Times() {
    scales = TimeScales.of(LeapSeconds.taiMinusUtc(), (conventions, timeScales) -> List.of());
    utc = scales.getUTC();
    tdb = scales.getTDB();
    j2000 = scales.getJ2000Epoch();
    utcOrigin = new AbsoluteDate(utcOriginInstant, utc);
  }

  TimeScales scales() {
    return scales;
  }

  AbsoluteDate date(Instant at) {
    return new AbsoluteDate(at, utc);
  }

  /** The instant so many days of TDB after J2000.0; TDB taken as TT, 2 ms at most. */
  AbsoluteDate date(double tdbDays) {
    return new AbsoluteDate(j2000, tdbDays * Constants.JULIAN_DAY);
  }

  /** Days of TDB since J2000.0. */
  double tdbDays(AbsoluteDate date) {
    return date.offsetFrom(j2000, tdb) / Constants.JULIAN_DAY;
  }

  double tdbDays(Instant at) {
    return tdbDays(date(at));
  }

  /** The inverse of {@link #tdbDays(Instant)}, to the millisecond. */
  Instant instant(double tdbDays) {
    AbsoluteDate first = date(tdbDays);
    AbsoluteDate date =
        new AbsoluteDate(j2000, (2 * tdbDays - tdbDays(first)) * Constants.JULIAN_DAY);
    return utcOriginInstant.plusMillis(Math.round(date.offsetFrom(utcOrigin, utc) * 1000));
  }
}

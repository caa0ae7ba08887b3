package org.limbspan.sky;

import java.util.List;
import org.orekit.time.DateComponents;
import org.orekit.time.OffsetModel;

/**
 * International Atomic Time minus Coordinated Universal Time since 1972.
 *
 * <p>Source: IERS Bulletin C. No leap second has been announced after that of 31 December 2016; the
 * last line holds until one is.
 */
final class LeapSeconds {

  private LeapSeconds() {}

  static List<OffsetModel> taiMinusUtc() {
    // @formatter:off
    return List.of(
        from(1972, 1, 10), from(1972, 7, 11), from(1973, 1, 12), from(1974, 1, 13),
        from(1975, 1, 14), from(1976, 1, 15), from(1977, 1, 16), from(1978, 1, 17),
        from(1979, 1, 18), from(1980, 1, 19), from(1981, 7, 20), from(1982, 7, 21),
        from(1983, 7, 22), from(1985, 7, 23), from(1988, 1, 24), from(1990, 1, 25),
        from(1991, 1, 26), from(1992, 7, 27), from(1993, 7, 28), from(1994, 7, 29),
        from(1996, 1, 30), from(1997, 7, 31), from(1999, 1, 32), from(2006, 1, 33),
        from(2009, 1, 34), from(2012, 7, 35), from(2015, 7, 36), from(2017, 1, 37));
    // @formatter:on
  }

  private static OffsetModel from(int year, int month, int seconds) {
    return new OffsetModel(new DateComponents(year, month, 1), seconds);
  }
}

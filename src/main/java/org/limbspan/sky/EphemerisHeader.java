package org.limbspan.sky;

import java.nio.ByteBuffer;
import org.limbspan.sky.Ephemeris.Series;

/**
 * The header of a JPL ephemeris file, checked.
 *
 * @param firstJd first TDB Julian date of the first block
 * @param lastJd last TDB Julian date of the last block
 * @param blocks number of blocks
 * @param earthMoonMassRatio mass of the Earth over that of the Moon
 */
record EphemerisHeader(double firstJd, double lastJd, int blocks, double earthMoonMassRatio) {

  static final int RECORD_DOUBLES = 458;
  static final int RECORD_BYTES = RECORD_DOUBLES * Double.BYTES;
  static final int HEADER_BYTES = 2 * RECORD_BYTES;

  private static final int DATES_AT = 2652;
  private static final int CONSTANTS_AT = 2680;
  private static final int POINTERS_AT = 2696;
  private static final int NUMBER_AT = 2840;
  private static final double BLOCK_DAYS = 32;

  /** Values of DE405: the file says of itself which constants it was computed with. */
  private static final double AU_KM = 149597870.691;

  private static final double EARTH_MOON_MASS_RATIO = 81.30056;
  private static final int NUMBER = 405;

  static EphemerisHeader of(ByteBuffer bytes) {
    expect("ephemeris length", bytes.limit() >= HEADER_BYTES + RECORD_BYTES, bytes.limit(), "more");
    double firstJd = bytes.getDouble(DATES_AT);
    double lastJd = bytes.getDouble(DATES_AT + 8);
    expect("ephemeris number", bytes.getInt(NUMBER_AT) == NUMBER, bytes.getInt(NUMBER_AT), "405");
    expectConstant("ephemeris block length in days", bytes.getDouble(DATES_AT + 16), BLOCK_DAYS);
    expectConstant("ephemeris astronomical unit in km", bytes.getDouble(CONSTANTS_AT), AU_KM);
    double massRatio = bytes.getDouble(CONSTANTS_AT + 8);
    expectConstant("ephemeris Earth-Moon mass ratio", massRatio, EARTH_MOON_MASS_RATIO);
    expectPointers(bytes, 2, Series.EARTH_MOON_BARYCENTRE);
    expectPointers(bytes, 9, Series.MOON);
    expectPointers(bytes, 10, Series.SUN);
    int blocks = (int) Math.round((lastJd - firstJd) / BLOCK_DAYS);
    long length = HEADER_BYTES + (long) blocks * RECORD_BYTES;
    expect("ephemeris length", bytes.limit() == length, bytes.limit(), length + " bytes");
    return new EphemerisHeader(firstJd, lastJd, blocks, massRatio);
  }

  private static void expectPointers(ByteBuffer bytes, int item, Series series) {
    int at = POINTERS_AT + item * 3 * Integer.BYTES;
    String found =
        "%d,%d,%d".formatted(bytes.getInt(at), bytes.getInt(at + 4), bytes.getInt(at + 8));
    String expected = "%d,%d,%d".formatted(series.offset + 1, series.terms, series.subBlocks);
    expect("ephemeris pointers of " + series, found.equals(expected), found, expected);
  }

  private static void expectConstant(String what, double found, double expected) {
    expect(what, found == expected, found, Double.toString(expected));
  }

  private static void expect(String what, boolean holds, Object found, String expected) {
    if (!holds) {
      throw new IllegalArgumentException(what + " " + found + ": expected " + expected);
    }
  }
}

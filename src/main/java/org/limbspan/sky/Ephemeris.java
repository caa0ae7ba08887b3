package org.limbspan.sky;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The positions of Moon and Sun, geometric and geocentric, from JPL DE405/LE405: Chebyshev series
 * over blocks of 32 days in the binary layout of JPL (little-endian, header of two records, then
 * one record a block). Immutable; safe for use by any number of threads.
 *
 * <p>Times inside the package are days of Barycentric Dynamical Time (TDB) since J2000.0, that is
 * since Julian date 2451545.0 TDB. Axes are those of the International Celestial Reference Frame,
 * which differ from the mean equator and equinox of J2000.0 by 0.02 arcseconds: neglected.
 *
 * <p>Accuracy: the distance of the Moon agrees with the full theory ELP 2000-82B to 0.1 km.
 *
 * <p>Source: E. M. Standish, JPL Planetary and Lunar Ephemerides DE405/LE405, JPL Interoffice
 * Memorandum 312.F-98-048, 1998.
 */
public final class Ephemeris {

  private static final double J2000_JD = 2451545.0;
  private static final double BLOCK_DAYS = 32;

  private final double firstDay;
  private final double lastDay;
  private final int blocks;
  private final double earthMoonMassRatio;
  private final double[] coefficients;

  private Ephemeris(EphemerisHeader header, double[] coefficients) {
    this.firstDay = header.firstJd() - J2000_JD;
    this.lastDay = header.lastJd() - J2000_JD;
    this.blocks = header.blocks();
    this.earthMoonMassRatio = header.earthMoonMassRatio();
    this.coefficients = coefficients;
  }

  /**
   * Takes over a whole ephemeris file, and checks it: constants, layout, length, the dates of every
   * block.
   *
   * @param file the bytes from the first header record on; its position and order are left alone
   * @throws IllegalArgumentException if it is no DE405 file of the expected layout, or is cut short
   *     or damaged
   */
  public static Ephemeris of(ByteBuffer file) {
    ByteBuffer bytes = file.slice().order(ByteOrder.LITTLE_ENDIAN);
    EphemerisHeader header = EphemerisHeader.of(bytes);
    double[] all = new double[header.blocks() * EphemerisHeader.RECORD_DOUBLES];
    bytes.position(EphemerisHeader.HEADER_BYTES).asDoubleBuffer().get(all);
    for (int block = 0; block < header.blocks(); block++) {
      checkBlock(all, block, header.firstJd() + block * BLOCK_DAYS);
    }
    return new Ephemeris(header, all);
  }

  private static void checkBlock(double[] all, int block, double firstJd) {
    int base = block * EphemerisHeader.RECORD_DOUBLES;
    if (all[base] != firstJd || all[base + 1] != firstJd + BLOCK_DAYS) {
      throw new IllegalArgumentException(
          "ephemeris block %d: dates %s to %s, expected %s to %s"
              .formatted(block, all[base], all[base + 1], firstJd, firstJd + BLOCK_DAYS));
    }
    for (int i = base; i < base + EphemerisHeader.RECORD_DOUBLES; i++) {
      if (!Double.isFinite(all[i])) {
        throw new IllegalArgumentException(
            "ephemeris block %d: %s at place %d, expected a number"
                .formatted(block, all[i], i - base));
      }
    }
  }

  /** First TDB Julian date held. */
  double firstJd() {
    return firstDay + J2000_JD;
  }

  /** Last TDB Julian date held. */
  double lastJd() {
    return lastDay + J2000_JD;
  }

  /** Earth's centre to the Moon's, km. */
  Vector3D moonKm(double tdbDays) {
    return position(Series.MOON, tdbDays);
  }

  /** Earth's centre to the Sun's, km; without light time. */
  Vector3D sunKm(double tdbDays) {
    return position(Series.SUN, tdbDays).subtract(earthKm(tdbDays));
  }

  /** Barycentre of the solar system to the Earth's centre, km. */
  Vector3D earthKm(double tdbDays) {
    Vector3D barycentre = position(Series.EARTH_MOON_BARYCENTRE, tdbDays);
    return new Vector3D(1, barycentre, -1 / (1 + earthMoonMassRatio), moonKm(tdbDays));
  }

  /** Rate of change of the distance between the centres of Earth and Moon, km per day. */
  double moonRangeRateKmPerDay(double tdbDays) {
    Place place = place(Series.MOON, tdbDays);
    Vector3D velocity =
        new Vector3D(
            derivative(place.base(), place.terms(), place.x()),
            derivative(place.base() + place.terms(), place.terms(), place.x()),
            derivative(place.base() + 2 * place.terms(), place.terms(), place.x()));
    double perDay = 2 * Series.MOON.subBlocks / BLOCK_DAYS;
    return velocity.dotProduct(moonKm(tdbDays).normalize()) * perDay;
  }

  private Vector3D position(Series series, double tdbDays) {
    Place place = place(series, tdbDays);
    return new Vector3D(
        value(place.base(), place.terms(), place.x()),
        value(place.base() + place.terms(), place.terms(), place.x()),
        value(place.base() + 2 * place.terms(), place.terms(), place.x()));
  }

  /** Where the series of an instant begins, and the argument of its polynomials, -1 to 1. */
  private record Place(int base, int terms, double x) {}

  private Place place(Series series, double tdbDays) {
    if (!(tdbDays >= firstDay && tdbDays <= lastDay)) {
      throw new IllegalArgumentException(
          "Julian date %s TDB: expected %s to %s"
              .formatted(tdbDays + J2000_JD, firstJd(), lastJd()));
    }
    int block = Math.min((int) ((tdbDays - firstDay) / BLOCK_DAYS), blocks - 1);
    double inBlock = tdbDays - firstDay - block * BLOCK_DAYS;
    double subDays = BLOCK_DAYS / series.subBlocks;
    int sub = Math.min((int) (inBlock / subDays), series.subBlocks - 1);
    int base = block * EphemerisHeader.RECORD_DOUBLES + series.offset + sub * 3 * series.terms;
    return new Place(base, series.terms, 2 * (inBlock / subDays - sub) - 1);
  }

  /** Clenshaw's recurrence for a sum of Chebyshev polynomials of the first kind. */
  private double value(int base, int terms, double x) {
    double b1 = 0;
    double b2 = 0;
    for (int k = terms - 1; k >= 1; k--) {
      double b0 = coefficients[base + k] + 2 * x * b1 - b2;
      b2 = b1;
      b1 = b0;
    }
    return coefficients[base] + x * b1 - b2;
  }

  /** The derivative of that sum: T'(k) = k U(k-1), summed by the recurrence of the second kind. */
  private double derivative(int base, int terms, double x) {
    double b1 = 0;
    double b2 = 0;
    for (int k = terms - 1; k >= 1; k--) {
      double b0 = k * coefficients[base + k] + 2 * x * b1 - b2;
      b2 = b1;
      b1 = b0;
    }
    return b1;
  }

  /** What a block holds: place of the first coefficient, coefficients a component, sub-blocks. */
  enum Series {
    EARTH_MOON_BARYCENTRE(2, 13, 2),
    MOON(80, 13, 8),
    SUN(392, 11, 2);

    final int offset;
    final int terms;
    final int subBlocks;

    Series(int offset, int terms, int subBlocks) {
      this.offset = offset;
      this.terms = terms;
      this.subBlocks = subBlocks;
    }
  }
}

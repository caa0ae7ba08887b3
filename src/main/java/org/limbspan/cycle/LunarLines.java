package org.limbspan.cycle;

import java.util.List;

/**
 * The periods in the Moon's distance, built on one free rate: the anomalistic one.
 *
 * <p>The theory of the Moon says that every inequality runs with whole multiples of four angles:
 * elongation D, the Sun's anomaly l', the Moon's anomaly l and the argument of latitude F. The rate
 * of D is the month of the phases, that of l' the year, that of F comes from eclipses: none needs a
 * table of the Moon's distance. The rate of l is left to the readings. Phases are free as well;
 * sizes are priors of the right order only, so that lines that the readings cannot carry count as
 * noise of known size and are not mistaken for a change of the period.
 *
 * <p>Sizes: amplitudes in ln(1/distance) in percent, from a least-squares fit to JPL DE405, 1980 to
 * 2060, rounded. Left out: everything below 0.01 percent, together 0.013 percent rms.
 */
final class LunarLines {

  /** Mean synodic month, days (J. Meeus, Astronomical Algorithms, ch. 49, from memory). */
  private static final double SYNODIC_DAYS = 29.530588861;

  /** Anomalistic year, days (Meeus, rate of the Sun's mean anomaly, from memory). */
  private static final double YEAR_DAYS = 365.2596;

  /** Draconic month, days (Meeus, rate of the argument of latitude, from memory). */
  private static final double DRACONIC_DAYS = 27.212221;

  /** Position of the anomalistic line among {@link #LINES}. */
  static final int FUNDAMENTAL = 0;

  // @formatter:off
  static final List<Line> LINES =
      List.of(
          //    D  l'  l   F   percent
          line(0, 0, 1, 0, Double.POSITIVE_INFINITY), // equation of the centre, 5.44
          line(2, 0, -1, 0, 0.98), // evection
          line(2, 0, 0, 0, 0.80), // variation
          line(0, 0, 2, 0, 0.22),
          line(2, 0, 1, 0, 0.20),
          line(2, -1, 0, 0, 0.055),
          line(2, -1, -1, 0, 0.041),
          line(2, 0, -2, 0, 0.037),
          line(0, 1, -1, 0, 0.048),
          line(1, 0, 0, 0, 0.028),
          line(0, 1, 1, 0, 0.039),
          line(0, 0, 1, -2, 0.021),
          line(4, 0, -1, 0, 0.013),
          line(0, 1, 0, 0, 0.012),
          line(0, 0, 3, 0, 0.05));
  // @formatter:on

  private LunarLines() {}

  private static Line line(int d, int year, int l, int f, double percent) {
    double fixed = d / SYNODIC_DAYS + year / YEAR_DAYS + f / DRACONIC_DAYS;
    return new Line(fixed, List.of(l), percent / 100);
  }
}

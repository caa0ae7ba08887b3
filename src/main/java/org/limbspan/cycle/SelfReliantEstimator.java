package org.limbspan.cycle;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.limbspan.sky.Site;

/**
 * Anomalistic period, eccentricity, swing and distance of the Moon from readings alone.
 *
 * <p>Model: {@link LunarLines} over one free anomalistic rate, each setup with a free level, the
 * observer's own parallax by {@link ParallaxLaw}. Assumed are the month of the phases, the year,
 * the month of the eclipses, the theorem that inequalities run with their multiples, and the order
 * of size of the small ones; no distance, no time of a perigee. A single sinusoid would be off by
 * some 0.05 d in the period and a fifth in the swing.
 *
 * <p>Lines that are left out add 0.005 percent to the uncertainty of the amplitude and 0.02 percent
 * to that of the swing (from 60 simulated rigs of three years each); the swing comes out some 0.01
 * percent too small.
 *
 * <p>Altitudes are the only thing taken from elsewhere, and may be the observer's own ({@link
 * AltitudeSource#SIGHTED}).
 */
public final class SelfReliantEstimator {

  private static final double STEP_DAYS = 0.1;

  private SelfReliantEstimator() {}

  /**
   * The cycle that {@code observations} of one rig draw, in any order.
   *
   * @return empty for fewer than eight readings, or where no period between 20 and 35 days comes
   *     out
   */
  public static Optional<SelfReliantCycle> estimate(
      List<Observation> observations, Site site, AltitudeSource altitudes) {
    return estimate(Series.of(observations, site), site, altitudes, LunarFit.Beginning::search);
  }

  static Optional<SelfReliantCycle> estimate(
      Series series,
      Site site,
      AltitudeSource altitudes,
      Function<LunarFit.Beginning, Optional<LunarFit.Result>> search) {
    return LunarFit.of(series, site, altitudes, search)
        .map(outcome -> cycle(outcome, series.where(altitudes::isKnown), altitudes));
  }

  private static SelfReliantCycle cycle(
      LunarFit.Outcome outcome, Series series, AltitudeSource altitudes) {
    LunarFit.Result result = outcome.result();
    SizeCurve curve = outcome.curve();
    Turns turns = turns(curve.settled(), series);
    double[][] extremes =
        series.memory().of(altitudes).extremes.of(turns, () -> new Extremes(turns)).days;
    double[] high = extremes[0];
    double[] low = extremes[1];
    Estimate swing = curve.meanDifference(high, low);
    double ratio = Math.exp(swing.value());
    double half = Math.tanh(swing.value() / 2);
    return new SelfReliantCycle(
        curve.period(),
        curve.fundamentalAmplitude(),
        new Estimate(100 * (ratio - 1), 100 * ratio * swing.uncertainty()),
        new Estimate(half, (1 - half * half) / 2 * swing.uncertainty()),
        high.length,
        MoonDistance.of(result.fit().coefficient(result.parallaxIndex())),
        curve,
        result.fit().noise(),
        series.size(),
        series.spanDays());
  }

  /** From the last perigee before the first reading to the first after the last. */
  private static Turns turns(SizeCurve curve, Series series) {
    double period = curve.periodDays();
    double first = curve.days(series.get(0).takenAt());
    double last = curve.days(series.get(series.size() - 1).takenAt());
    double turn = Math.floor((first - curve.crestDays()) / period);
    int count = 1;
    while (curve.crestDays() + (turn + count - 1) * period < last) {
      count++;
    }
    return new Turns(curve, turn, count);
  }

  /**
   * Some turns of a curve.
   *
   * @param first of them, from that nearest to the epoch on
   */
  record Turns(SizeCurve curve, double first, int count) {}

  /** Days of the perigees and of the apogee after each of them. */
  static final class Extremes {

    private final double[][] days;

    private Extremes(Turns turns) {
      SizeCurve curve = turns.curve();
      double period = curve.periodDays();
      double[] crests = new double[turns.count()];
      for (int k = 0; k < crests.length; k++) {
        double day = curve.crestDays() + (turns.first() + k) * period;
        crests[k] = extreme(curve, day - period / 2, day + period / 2, 1);
      }
      double[] low = new double[crests.length - 1];
      for (int k = 0; k < low.length; k++) {
        low[k] = extreme(curve, crests[k], crests[k + 1], -1);
      }
      days = new double[][] {Arrays.copyOf(crests, low.length), low};
    }
  }

  private static double extreme(SizeCurve curve, double from, double to, int sign) {
    double[] days = new double[1 + (int) ((to - from) / STEP_DAYS)];
    for (int i = 0; i < days.length; i++) {
      days[i] = from + i * STEP_DAYS;
    }
    double[] values = curve.values(days);
    int best = 0;
    for (int i = 1; i < days.length; i++) {
      if (sign * values[i] > sign * values[best]) {
        best = i;
      }
    }
    return days[best];
  }
}

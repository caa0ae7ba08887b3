package org.limbspan.cycle;

import java.util.ArrayList;
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
        .map(result -> cycle(result, series.where(altitudes::isKnown)));
  }

  private static SelfReliantCycle cycle(LunarFit.Result result, Series series) {
    SizeCurve curve = SizeCurve.of(result);
    List<Double> crests = crests(curve, series);
    double[] high = new double[crests.size() - 1];
    double[] low = new double[crests.size() - 1];
    for (int k = 0; k < high.length; k++) {
      high[k] = crests.get(k);
      low[k] = extreme(curve, crests.get(k), crests.get(k + 1), -1);
    }
    Estimate swing = curve.meanDifference(high, low);
    double ratio = Math.exp(swing.value());
    double half = Math.tanh(swing.value() / 2);
    return new SelfReliantCycle(
        curve.period(),
        curve.fundamentalAmplitude(),
        new Estimate(100 * (ratio - 1), 100 * ratio * swing.uncertainty()),
        new Estimate(half, (1 - half * half) / 2 * swing.uncertainty()),
        high.length,
        MoonDistance.of(result.fit().coefficient(result.model().parallaxIndex())),
        curve,
        result.fit().noise(),
        series.size(),
        series.spanDays());
  }

  /** Days of the perigees from the last before the first reading to the first after the last. */
  private static List<Double> crests(SizeCurve curve, Series series) {
    double period = curve.periodDays();
    double first = curve.days(series.get(0).takenAt());
    double last = curve.days(series.get(series.size() - 1).takenAt());
    double turn = Math.floor((first - curve.crestDays()) / period);
    List<Double> crests = new ArrayList<>();
    double day;
    do {
      day = curve.crestDays() + turn * period;
      crests.add(extreme(curve, day - period / 2, day + period / 2, 1));
      turn++;
    } while (day < last);
    return crests;
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

package org.limbspan.cycle;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.Site;

/**
 * The swing of each anomalistic month.
 *
 * <p>Definition: D(perigee) / D(apogee) - 1, in percent, geocentric, the month's first perigee and
 * the apogee that follows. The readings of the month are regressed on their own predictions
 * (topocentric, along their own axis), so that nights far from the apsides count as well; the slope
 * stretches the predicted logarithmic swing. Levels are free for each setup, noise is that of the
 * whole history ({@link SlopeEstimator}), outliers are judged within the month. Fewer than four
 * readings, fewer than three nights or an uncertainty of the slope above 0.2: too few. A month
 * departs only if it still does whichever single reading is left out: a slip among six is no month.
 */
public final class MonthEstimator {

  private static final int LEAST_READINGS = 4;
  private static final int LEAST_PASSES = 3;

  private final Series series;
  private final Optional<Noise> noise;

  private MonthEstimator(Series series) {
    this.series = series;
    this.noise = series.slope().map(RobustRegression.Fit::noise);
  }

  /**
   * All months that {@code apsides} bound, from the one of the first reading to that of the last.
   *
   * @param apsides of the time of the readings and a month more at both ends, in any order
   */
  public static List<MonthSwing> estimate(
      List<Observation> observations, Site site, List<Apsis> apsides) {
    return estimate(Series.of(observations, site), apsides);
  }

  /** The same over a series. */
  public static List<MonthSwing> estimate(Series series, List<Apsis> apsides) {
    return new MonthEstimator(series).months(apsides);
  }

  private List<MonthSwing> months(List<Apsis> apsides) {
    List<Apsis> ordered = apsides.stream().sorted(Comparator.comparing(Apsis::at)).toList();
    List<MonthSwing> months = new ArrayList<>();
    for (int i = 0; i + 2 < ordered.size(); i++) {
      Apsis perigee = ordered.get(i);
      Apsis next = ordered.get(i + 2);
      if (perigee.kind() == Apsis.Kind.PERIGEE && touches(perigee, next)) {
        months.add(month(perigee, ordered.get(i + 1), next));
      }
    }
    series
        .memory()
        .months
        .keepOnly(months.stream().map(MonthSwing::perigeeAt).collect(Collectors.toSet()));
    return List.copyOf(months);
  }

  private boolean touches(Apsis perigee, Apsis next) {
    return series.size() > 0
        && series.get(0).takenAt().isBefore(next.at())
        && !series.get(series.size() - 1).takenAt().isBefore(perigee.at());
  }

  private MonthSwing month(Apsis perigee, Apsis apogee, Apsis next) {
    Series within = series.between(perigee.at(), next.at());
    return series
        .memory()
        .months
        .of(
            new MonthMemory.Key(List.of(perigee, apogee, next), within.observations(), noise),
            () -> month(perigee, apogee, next, within));
  }

  private MonthSwing month(Apsis perigee, Apsis apogee, Apsis next, Series within) {
    double predicted = Math.log(apogee.distanceKm() / perigee.distanceKm());
    Optional<Estimate> slope = slope(within);
    return new MonthSwing(
        perigee.at(),
        apogee.at(),
        next.at(),
        within.size(),
        slope.map(s -> swingPercent(s, predicted)),
        100 * Math.expm1(predicted),
        slope,
        verdict(within, slope));
  }

  private Optional<Estimate> slope(Series within) {
    return noise
        .flatMap(
            n ->
                RobustRegression.fit(
                    SlopeEstimator.rows(within), NightPart.RANDOM, new double[] {1}, n))
        .map(fit -> fit.coefficient(0));
  }

  private static Estimate swingPercent(Estimate slope, double predicted) {
    double ratio = Math.exp(slope.value() * predicted);
    return new Estimate(100 * (ratio - 1), 100 * ratio * predicted * slope.uncertainty());
  }

  private Verdict verdict(Series within, Optional<Estimate> slope) {
    if (within.size() < LEAST_READINGS || within.passCount() < LEAST_PASSES) {
      return Verdict.TOO_FEW;
    }
    Verdict verdict = slope.map(SlopeEstimator::verdict).orElse(Verdict.TOO_FEW);
    return verdict == Verdict.DEPARTS && hangsOnOneReading(within) ? Verdict.AGREES : verdict;
  }

  private boolean hangsOnOneReading(Series within) {
    return within.observations().stream()
        .map(one -> slope(within.where(o -> !o.equals(one))))
        .anyMatch(
            slope -> slope.map(SlopeEstimator::verdict).orElse(Verdict.TOO_FEW) != Verdict.DEPARTS);
  }
}

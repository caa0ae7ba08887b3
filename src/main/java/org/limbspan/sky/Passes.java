package org.limbspan.sky;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.limbspan.sky.Extremes.Extreme;

/**
 * Finds the passes of the Moon over one site: first all greatest and least altitudes, then the rise
 * and the set between each greatest and its neighbours, where the upper limb crosses the horizon
 * just once.
 */
final class Passes {

  /** A least altitude lies nearer than this on either side of any greatest, even at the poles. */
  static final double NEIGHBOUR_DAYS = 16;

  /**
   * Half an hour. Greatest and least altitudes come nearer to each other than this only within a
   * degree or two of the poles, and then differ by less than an arcsecond.
   */
  private static final double STEP_DAYS = 1.0 / 48;

  private static final double TOLERANCE_DAYS = 1e-8;
  private static final int MOST_EVALUATIONS = 200;

  private final MoonTrack track;
  private final Times times;
  private final Function<Instant, MoonSight> sights;

  Passes(MoonTrack track, Times times, Function<Instant, MoonSight> sights) {
    this.track = track;
    this.times = times;
    this.sights = sights;
  }

  /** All passes with their culmination in {@code [from, to)}, in order of time. */
  List<Pass> between(Instant from, Instant to) {
    List<Extreme> extremes =
        Extremes.of(
            track::sineOfAltitude,
            times.tdbDays(from) - NEIGHBOUR_DAYS,
            times.tdbDays(to) + NEIGHBOUR_DAYS,
            STEP_DAYS);
    List<Pass> passes = new ArrayList<>();
    for (int i = 1; i < extremes.size() - 1; i++) {
      Extreme extreme = extremes.get(i);
      Instant at = times.instant(extreme.atDays());
      boolean inside = !at.isBefore(from) && at.isBefore(to);
      if (inside && extreme.greatest() && track.upperLimbDeg(extreme.atDays()) > 0) {
        passes.add(
            new Pass(
                crossing(extremes.get(i - 1), extreme),
                sights.apply(at),
                crossing(extreme, extremes.get(i + 1))));
      }
    }
    return List.copyOf(passes);
  }

  private Optional<MoonSight> crossing(Extreme first, Extreme second) {
    Extreme least = first.greatest() ? second : first;
    if (track.upperLimbDeg(least.atDays()) >= 0) {
      return Optional.empty();
    }
    double startDays = first.atDays();
    double afterStart =
        new BracketingNthOrderBrentSolver(TOLERANCE_DAYS, 5)
            .solve(
                MOST_EVALUATIONS,
                days -> track.upperLimbDeg(startDays + days),
                0,
                second.atDays() - startDays);
    return Optional.of(sights.apply(times.instant(startDays + afterStart)));
  }
}

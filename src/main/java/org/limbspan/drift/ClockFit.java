package org.limbspan.drift;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.limbspan.cycle.Observation;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;

/**
 * By how much a clock would have to be off for the Moon to have stood where it was sighted.
 *
 * <p>Algorithm: the likelihood of the sighting every 20 minutes of 14 hours both ways, the best of
 * them refined by Brent's method.
 */
final class ClockFit {

  private static final int MOST_MINUTES = 14 * 60;
  private static final int STEP_MINUTES = 20;
  private static final double LEAST_GAIN = 6;
  private static final int MOST_EVALUATIONS = 50;

  private final Sky sky;
  private final Site site;

  ClockFit(Sky sky, Site site) {
    this.sky = sky;
    this.site = site;
  }

  /** The amount by which the clock is ahead, to the minute; empty where none fits much better. */
  Optional<Duration> ahead(Observation reading) {
    if (reading.sighted().altitudeDeg().isEmpty() || isNearTheEdge(reading.takenAt())) {
      return Optional.empty();
    }
    UnivariateFunction fit = minutes -> logLikelihood(reading, minutes);
    double asLogged = fit.value(0);
    double most = asLogged;
    int best = 0;
    for (int minutes = -MOST_MINUTES; minutes <= MOST_MINUTES; minutes += STEP_MINUTES) {
      double likelihood = fit.value(minutes);
      if (likelihood > most) {
        most = likelihood;
        best = minutes;
      }
    }
    double refined =
        new BrentOptimizer(1e-6, 0.1)
            .optimize(
                GoalType.MAXIMIZE,
                new UnivariateObjectiveFunction(fit),
                new SearchInterval(best - STEP_MINUTES, best + STEP_MINUTES, best),
                new MaxEval(MOST_EVALUATIONS))
            .getPoint();
    return fit.value(refined) > asLogged + LEAST_GAIN
        ? Optional.of(Duration.ofMinutes(Math.round(refined)))
        : Optional.empty();
  }

  private double logLikelihood(Observation reading, double minutesAhead) {
    Instant at = reading.takenAt().minusMillis(Math.round(60e3 * minutesAhead));
    return Sighting.logLikelihood(reading, sky.moonAt(at, site));
  }

  private boolean isNearTheEdge(Instant at) {
    Duration day = Duration.ofDays(1);
    return at.minus(day).isBefore(sky.ephemerisFrom()) || !at.plus(day).isBefore(sky.ephemerisTo());
  }
}

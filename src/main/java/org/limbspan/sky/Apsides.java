package org.limbspan.sky;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * Perigees and apogees: where the rate of change of the geocentric distance passes through zero.
 * Found to the millisecond; what the ephemeris knows of them is good to a second.
 */
final class Apsides {

  /** Perigee and apogee are never less than 11 days apart, so no two share a step. */
  private static final double STEP_DAYS = 2;

  /** Two perigees are never more than 28.6 days apart, so one lies nearer than this. */
  private static final double NEAREST_PERIGEE_DAYS = 15;

  private static final double TOLERANCE_DAYS = 1e-9;
  private static final int MOST_EVALUATIONS = 200;

  private final Ephemeris ephemeris;
  private final Times times;

  Apsides(Ephemeris ephemeris, Times times) {
    this.ephemeris = ephemeris;
    this.times = times;
  }

  /** All apsides in {@code [from, to)}, in order of time. */
  List<Apsis> between(Instant from, Instant to) {
    double endDays = times.tdbDays(to) + STEP_DAYS;
    List<Apsis> found = new ArrayList<>();
    double startDays = onGrid(times.tdbDays(from) - STEP_DAYS);
    double rateBefore = ephemeris.moonRangeRateKmPerDay(startDays);
    while (startDays < endDays) {
      double rateAfter = ephemeris.moonRangeRateKmPerDay(startDays + STEP_DAYS);
      if (rateBefore < 0 && rateAfter >= 0) {
        found.add(apsis(Apsis.Kind.PERIGEE, startDays));
      } else if (rateBefore > 0 && rateAfter <= 0) {
        found.add(apsis(Apsis.Kind.APOGEE, startDays));
      }
      rateBefore = rateAfter;
      startDays += STEP_DAYS;
    }
    found.removeIf(apsis -> apsis.at().isBefore(from) || !apsis.at().isBefore(to));
    return List.copyOf(found);
  }

  /** Days from the nearest perigee to {@code at}; of two equally near the earlier. */
  double daysFromPerigee(Instant at) {
    double days = times.tdbDays(at);
    double nearest = Double.POSITIVE_INFINITY;
    double startDays = onGrid(days - NEAREST_PERIGEE_DAYS);
    for (; startDays < days + NEAREST_PERIGEE_DAYS; startDays += STEP_DAYS) {
      if (ephemeris.moonRangeRateKmPerDay(startDays) < 0
          && ephemeris.moonRangeRateKmPerDay(startDays + STEP_DAYS) >= 0) {
        double fromPerigee = days - stationaryDays(startDays);
        nearest = Math.abs(fromPerigee) < Math.abs(nearest) ? fromPerigee : nearest;
      }
    }
    return nearest;
  }

  /** Steps begin at the same instants for every question, so that an apsis is the same in each. */
  private static double onGrid(double days) {
    return Math.floor(days / STEP_DAYS) * STEP_DAYS;
  }

  private Apsis apsis(Apsis.Kind kind, double startDays) {
    double days = stationaryDays(startDays);
    return new Apsis(kind, times.instant(days), ephemeris.moonKm(days).getNorm());
  }

  private double stationaryDays(double startDays) {
    return startDays
        + new BracketingNthOrderBrentSolver(TOLERANCE_DAYS, 5)
            .solve(
                MOST_EVALUATIONS,
                days -> ephemeris.moonRangeRateKmPerDay(startDays + days),
                0,
                STEP_DAYS);
  }
}

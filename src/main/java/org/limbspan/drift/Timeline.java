package org.limbspan.drift;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.limbspan.cycle.Observation;

/**
 * Puts the facts of a setup into one order, whatever the order in which they came. At the same
 * instant a calibration goes before a reading. A fact that is there twice counts once.
 */
final class Timeline {

  /** Readings within this time of the first one of a night belong to that night. */
  private static final Duration NIGHT = Duration.ofHours(12);

  private static final Comparator<CalibrationPoint> CALIBRATIONS =
      Comparator.comparing(CalibrationPoint::takenAt)
          .thenComparingDouble(CalibrationPoint::logScale)
          .thenComparingDouble(CalibrationPoint::independentUncertainty)
          .thenComparingDouble(CalibrationPoint::commonUncertainty);

  private static final Comparator<Observation> READINGS =
      Comparator.comparing(Observation::takenAt)
          .thenComparing(Observation::axis)
          .thenComparingDouble(Observation::observedArcmin)
          .thenComparingDouble(Observation::relativeUncertainty);

  private Timeline() {}

  static List<Fact> of(SetupHistory setup) {
    return of(setup, new ArrayList<>(), Instant.MIN);
  }

  /** A history and its facts. */
  record Known(SetupHistory setup, List<Fact> facts) {}

  /** The same facts, those that are known already not made again. */
  static List<Fact> of(SetupHistory setup, Known known) {
    List<Observation> before = known.setup().observations();
    List<Observation> now = setup.observations();
    List<Fact> facts = known.facts();
    if (facts.isEmpty()
        || now.size() < before.size()
        || !setup.calibrations().equals(known.setup().calibrations())
        || !now.subList(0, before.size()).equals(before)) {
      return of(setup);
    }
    Instant last = facts.get(facts.size() - 1).at;
    List<Observation> added = now.subList(before.size(), now.size());
    if (!added.stream().allMatch(reading -> reading.takenAt().isAfter(last))) {
      return of(setup);
    }
    SetupHistory rest =
        new SetupHistory(setup.number(), setup.from(), setup.to(), List.of(), added);
    return of(rest, new ArrayList<>(facts), lastNight(facts));
  }

  private static Instant lastNight(List<Fact> facts) {
    for (int i = facts.size() - 1; i >= 0; i--) {
      if (facts.get(i).opensNight) {
        return facts.get(i).at;
      }
    }
    return Instant.MIN;
  }

  private static List<Fact> of(SetupHistory setup, List<Fact> facts, Instant night) {
    List<CalibrationPoint> calibrations =
        setup.calibrations().stream().distinct().sorted(CALIBRATIONS).toList();
    List<Observation> readings = setup.observations().stream().distinct().sorted(READINGS).toList();
    int next = 0;
    Instant nightFrom = night;
    for (Observation reading : readings) {
      while (next < calibrations.size()
          && !calibrations.get(next).takenAt().isAfter(reading.takenAt())) {
        CalibrationPoint point = calibrations.get(next++);
        facts.add(Fact.calibration(point, gapDays(facts, point.takenAt())));
      }
      boolean opensNight =
          nightFrom.equals(Instant.MIN) || !reading.takenAt().isBefore(nightFrom.plus(NIGHT));
      if (opensNight) {
        nightFrom = reading.takenAt();
      }
      facts.add(Fact.reading(reading, gapDays(facts, reading.takenAt()), opensNight));
    }
    for (CalibrationPoint point : calibrations.subList(next, calibrations.size())) {
      facts.add(Fact.calibration(point, gapDays(facts, point.takenAt())));
    }
    return facts;
  }

  private static double gapDays(List<Fact> facts, Instant at) {
    return facts.isEmpty() ? 0 : Fact.daysOf(at) - facts.get(facts.size() - 1).day;
  }
}

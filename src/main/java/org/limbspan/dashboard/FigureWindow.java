package org.limbspan.dashboard;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.limbspan.platform.InvalidInput;

/**
 * What part of the ledger a figure shows, and how finely.
 *
 * @param from included
 * @param to excluded, later than {@code from}
 * @param points how many points the screen can show side by side
 */
record FigureWindow(Instant from, Instant to, int points) {

  private static final int LEAST_POINTS = 100;
  static final int MOST_POINTS = 4000;
  private static final Duration EDGE = Duration.ofDays(5);

  FigureWindow {
    if (!from.isBefore(to)) {
      throw InvalidInput.inQuery("to", to, "an instant later than from, " + from);
    }
    points = Math.max(LEAST_POINTS, Math.min(MOST_POINTS, points));
  }

  /** The window asked for; without bounds the whole ledger and some days at both ends. */
  static FigureWindow of(
      LedgerFacts facts, Optional<Instant> from, Optional<Instant> to, int points) {
    Instant first = facts.firstAt().orElse(facts.judgedAt());
    Instant last = facts.lastAt().orElse(facts.judgedAt());
    return new FigureWindow(from.orElse(first.minus(EDGE)), to.orElse(last.plus(EDGE)), points);
  }

  /** The part of it that lies within bounds. */
  FigureWindow within(Instant first, Instant end) {
    return new FigureWindow(
        from.isBefore(first) ? first : from, to.isAfter(end) ? end : to, points);
  }

  Duration width() {
    return Duration.between(from, to);
  }

  boolean holds(Instant at) {
    return !at.isBefore(from) && at.isBefore(to);
  }

  /** Evenly spaced instants from the first to the last, not more than {@code count}. */
  List<Instant> ticks(int count) {
    Duration step = width().dividedBy(count).plusSeconds(1);
    return Stream.iterate(from, this::holds, at -> at.plus(step)).toList();
  }
}

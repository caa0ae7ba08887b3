package org.limbspan.reading;

import java.time.Instant;
import java.time.ZoneOffset;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;

/**
 * Readings with {@code from <= takenAt < to} that come after a place in the order of instant and
 * axis.
 *
 * @param afterAxis the axis at {@code afterAt} that was last; empty: none was
 */
record ReadingSpan(Instant from, Instant to, Instant afterAt, String afterAxis) {

  /** Beyond every ephemeris, within what the database can hold. */
  private static final Instant BEGINNING = Instant.parse("1800-01-01T00:00:00Z");

  private static final Instant END = Instant.parse("2200-01-01T00:00:00Z");

  static final ReadingSpan ALL = between(BEGINNING, END);

  static ReadingSpan between(Instant from, Instant to) {
    return new ReadingSpan(from, to, from, "");
  }

  static ReadingSpan of(org.limbspan.rig.Setup setup) {
    return between(setup.startedAt().orElse(BEGINNING), setup.endedAt().orElse(END));
  }

  /** The part after a place in it; nothing before the place's instant is looked through again. */
  ReadingSpan after(Instant instant, String axis) {
    return new ReadingSpan(instant, to, instant, axis);
  }

  StatementSpec bind(StatementSpec statement, long rigId) {
    return statement
        .param("rigId", rigId)
        .param("from", from.atOffset(ZoneOffset.UTC))
        .param("to", to.atOffset(ZoneOffset.UTC))
        .param("afterAt", afterAt.atOffset(ZoneOffset.UTC))
        .param("afterAxis", afterAxis);
  }
}

package org.limbspan.notice;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;

/** Instants as the database takes them, to the microsecond that it keeps. */
final class Utc {

  private Utc() {}

  static OffsetDateTime of(Instant instant) {
    return OffsetDateTime.ofInstant(instant.truncatedTo(ChronoUnit.MICROS), ZoneOffset.UTC);
  }
}

package org.limbspan.dashboard;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Instants as a page writes them, in the time zone of its rig. */
record RigTime(ZoneId zone) {

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT_DAY =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter FIELD = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");

  String day(Instant at) {
    return DAY.format(at.atZone(zone));
  }

  String shortDay(Instant at) {
    return SHORT_DAY.format(at.atZone(zone));
  }

  String minute(Instant at) {
    return MINUTE.format(at.atZone(zone));
  }

  /** As a form takes it: {@code 2024-06-20 13:02}. */
  String field(Instant at) {
    return FIELD.format(at.atZone(zone));
  }

  LocalDate date(Instant at) {
    return at.atZone(zone).toLocalDate();
  }
}

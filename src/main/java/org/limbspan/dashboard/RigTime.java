package org.limbspan.dashboard;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import java.util.Optional;

/** Instants as a page writes them, in the time zone of its rig. */
record RigTime(ZoneId zone) {

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT_DAY =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter SECOND =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm:ss", Locale.ENGLISH);
  private static final DateTimeFormatter FIELD = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");
  private static final int DAY_LENGTH = 10;
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

  String day(Instant at) {
    return DAY.format(at.atZone(zone));
  }

  String shortDay(Instant at) {
    return SHORT_DAY.format(at.atZone(zone));
  }

  String minute(Instant at) {
    return MINUTE.format(at.atZone(zone));
  }

  String second(Instant at) {
    return SECOND.format(at.atZone(zone));
  }

  /** As a form takes it: {@code 2024-06-20 13:02}. */
  String field(Instant at) {
    return FIELD.format(at.atZone(zone));
  }

  /** Of a local time as a form takes it, or a day alone: its noon; empty if it is neither. */
  Optional<Instant> instant(String local) {
    String plain = local.strip().replace('T', ' ');
    try {
      LocalDateTime moment =
          plain.length() == DAY_LENGTH
              ? LocalDate.parse(plain).atTime(12, 0)
              : LocalDateTime.parse(plain, FIELD);
      return Optional.of(moment.atZone(zone).toInstant());
    } catch (DateTimeParseException notATime) {
      return Optional.empty();
    }
  }

  /** Two instants as days, or as minutes of one day. */
  String span(Instant from, Instant to) {
    LocalDate first = from.atZone(zone).toLocalDate();
    LocalDate last = to.atZone(zone).toLocalDate();
    if (!first.equals(last)) {
      return shortDay(from) + " to " + shortDay(to);
    }
    return from.equals(to) ? minute(from) : minute(from) + " to " + CLOCK.format(to.atZone(zone));
  }
}

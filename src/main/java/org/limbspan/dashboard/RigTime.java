package org.limbspan.dashboard;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.time.temporal.TemporalAccessor;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

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
  private static final DateTimeFormatter TYPED =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm[[ ]XXX]")
          .withResolverStyle(ResolverStyle.STRICT);
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

  /**
   * Of a time as a form takes it, or a day alone: its noon; empty if it is neither. Without an
   * offset from UTC it is of the rig's time zone.
   */
  Optional<Instant> instant(String typed) {
    return moment(typed)
        .map(
            moment ->
                moment instanceof OffsetDateTime told
                    ? told.toInstant()
                    : LocalDateTime.from(moment).atZone(zone).toInstant());
  }

  /** What is wrong with a time that the rig's clock never showed, or showed twice. */
  Optional<String> doubt(String typed) {
    Optional<LocalDateTime> local =
        moment(typed).filter(LocalDateTime.class::isInstance).map(LocalDateTime::from);
    List<ZoneOffset> offsets =
        local.map(moment -> zone.getRules().getValidOffsets(moment)).orElse(List.of());
    if (local.isEmpty() || offsets.size() == 1) {
      return Optional.empty();
    }
    return Optional.of(
        offsets.isEmpty()
            ? "The clock of " + zone + " is set forward over this time; expected one that it shows."
            : "The clock of "
                + zone
                + " shows this time twice; expected it with its offset from UTC: "
                + offsets.stream()
                    .map(offset -> TYPED.format(local.get().atOffset(offset)))
                    .collect(Collectors.joining(" or "))
                + ".");
  }

  /** Whether a day is typed without a time of it. */
  static boolean isDay(String typed) {
    return typed.strip().length() == DAY_LENGTH && moment(typed).isPresent();
  }

  private static Optional<TemporalAccessor> moment(String typed) {
    String plain = typed.strip().replace('T', ' ');
    try {
      return Optional.of(
          plain.length() == DAY_LENGTH
              ? LocalDate.parse(plain).atTime(12, 0)
              : TYPED.parseBest(plain, OffsetDateTime::from, LocalDateTime::from));
    } catch (DateTimeParseException notATime) {
      return Optional.empty();
    }
  }

  /** When something lasted or was done, in whole days: {@code on} one, or {@code from} and to. */
  String days(Instant from, Instant to) {
    return day(from).equals(day(to)) ? "on " + day(from) : "from " + day(from) + " to " + day(to);
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

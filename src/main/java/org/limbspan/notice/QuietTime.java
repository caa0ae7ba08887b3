package org.limbspan.notice;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.List;

/**
 * The part of each day in which nothing is sent, {@code [from, to)} by the clock on the wall; over
 * midnight where {@code from} is the later.
 *
 * <p>Where the clock is put back it begins at the first time of that name and ends at the last;
 * where the clock is put forward over an end, the end is that moment.
 */
public record QuietTime(LocalTime from, LocalTime to) {

  /**
   * @throws IllegalArgumentException if both are the same
   */
  public QuietTime {
    if (from.equals(to)) {
      throw new IllegalArgumentException("quiet time from " + from + " to " + to + ": no time");
    }
  }

  /** {@code at}, or the end of the quiet time that it lies in. */
  Instant after(Instant at, ZoneId zone) {
    LocalDate day = at.atZone(zone).toLocalDate();
    Instant result = at;
    for (int shift = -1; shift <= 1; shift++) {
      LocalDate evening = day.plusDays(shift);
      LocalDate morning = to.isAfter(from) ? evening : evening.plusDays(1);
      Instant start = first(evening.atTime(from), zone.getRules());
      Instant end = last(morning.atTime(to), zone.getRules());
      if (!start.isAfter(result) && result.isBefore(end)) {
        result = end;
      }
    }
    return result;
  }

  private static Instant first(LocalDateTime time, ZoneRules rules) {
    List<ZoneOffset> offsets = rules.getValidOffsets(time);
    return offsets.isEmpty() ? leap(time, rules) : time.toInstant(offsets.get(0));
  }

  private static Instant last(LocalDateTime time, ZoneRules rules) {
    List<ZoneOffset> offsets = rules.getValidOffsets(time);
    return offsets.isEmpty() ? leap(time, rules) : time.toInstant(offsets.get(offsets.size() - 1));
  }

  /** The moment at which the clock leaps over a time. */
  private static Instant leap(LocalDateTime time, ZoneRules rules) {
    ZoneOffsetTransition transition = rules.getTransition(time);
    return transition.getInstant();
  }
}

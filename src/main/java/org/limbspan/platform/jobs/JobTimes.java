package org.limbspan.platform.jobs;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.random.RandomGenerator;

/** When a job is due. */
@FunctionalInterface
public interface JobTimes {

  /** The first time after an instant, which is when the job was done last. */
  Instant next(Instant after);

  /** So long after it was done last. */
  static JobTimes every(Duration pause) {
    if (pause.isNegative() || pause.isZero()) {
      throw new IllegalArgumentException("pause is " + pause + "; expected more than 0 s");
    }
    return after -> after.plus(pause);
  }

  /**
   * Once a day, at a time of day and up to {@code spread} later, so that services that share a disk
   * do not all begin at once. A time that a change of clocks leaves out is taken as {@link
   * java.time.ZonedDateTime} does, later by the gap; of one that comes twice the first counts.
   *
   * @param spread from 0 to 12 h
   */
  static JobTimes daily(LocalTime at, ZoneId zone, Duration spread, RandomGenerator random) {
    if (spread.isNegative() || spread.compareTo(Duration.ofHours(12)) > 0) {
      throw new IllegalArgumentException("spread is " + spread + "; expected from 0 h to 12 h");
    }
    return after -> {
      LocalDate day = after.atZone(zone).toLocalDate();
      Instant today = day.atTime(at).atZone(zone).toInstant();
      Instant next =
          today.isAfter(after) ? today : day.plusDays(1).atTime(at).atZone(zone).toInstant();
      return next.plusMillis(random.nextLong(spread.toMillis() + 1));
    };
  }
}

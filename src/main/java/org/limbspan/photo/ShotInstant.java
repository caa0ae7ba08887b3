package org.limbspan.photo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.limbspan.photo.file.Shot;

/**
 * The instant at which a photograph was taken and who told it.
 *
 * @param at to the microsecond
 */
record ShotInstant(Instant at, Clock clock) {

  /** Who told the instant. */
  enum Clock {
    SENDER("sender"),
    OFFSET("offset"),
    TIME_ZONE("time-zone");

    private final String label;

    Clock(String label) {
      this.label = label;
    }

    String label() {
      return label;
    }
  }

  private static final String REMEDY =
      " Send it again with takenAt, an instant with its offset from UTC.";

  /**
   * The instant of a photograph.
   *
   * @param told by the sender: it counts before the camera's clock
   * @param zone of the rig, for cameras that do not tell their offset
   * @throws RefusedPhoto if nobody tells it, or the camera's clock does not tell it apart
   */
  static ShotInstant of(@Nullable Instant told, Shot shot, ZoneId zone) throws RefusedPhoto {
    if (told != null) {
      return new ShotInstant(told.truncatedTo(ChronoUnit.MICROS), Clock.SENDER);
    }
    LocalDateTime local = shot.takenLocal();
    if (local == null) {
      throw refused(
          "no-time",
          "The file does not tell when it was taken: expected Exif DateTimeOriginal, set by the"
              + " camera's clock.");
    }
    ZoneOffset offset = shot.offset();
    if (offset != null) {
      return new ShotInstant(local.toInstant(offset).truncatedTo(ChronoUnit.MICROS), Clock.OFFSET);
    }
    return new ShotInstant(
        local.toInstant(offset(local, zone)).truncatedTo(ChronoUnit.MICROS), Clock.TIME_ZONE);
  }

  private static ZoneOffset offset(LocalDateTime local, ZoneId zone) throws RefusedPhoto {
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    if (offsets.size() == 1) {
      return offsets.get(0);
    }
    String clock = local.toLocalDate() + " " + local.toLocalTime();
    if (offsets.isEmpty()) {
      Duration gap = zone.getRules().getTransition(local).getDuration();
      throw refused(
          "time-left-out",
          "The camera's clock said %s, which was left out in %s when clocks were put forward by %d minutes: its clock was not put forward, or is wrong."
              .formatted(clock, zone, gap.toMinutes()));
    }
    throw refused(
        "time-twice",
        "The camera's clock said %s, which came twice in %s when clocks were put back: once at %s, once at %s from UTC."
            .formatted(clock, zone, offsets.get(0), offsets.get(1)));
  }

  private static RefusedPhoto refused(String code, String reason) {
    return new RefusedPhoto(code, reason + REMEDY).onPages(reason);
  }
}

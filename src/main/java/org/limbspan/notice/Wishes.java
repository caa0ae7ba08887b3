package org.limbspan.notice;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a recipient is told, and when not.
 *
 * @param notices kinds; none by itself
 * @param quiet null for none
 * @param reminder for {@link NoticeKind#WINDOW_REMINDER}
 * @param silentPasses for {@link NoticeKind#RIG_SILENT}: passes without a reading, 1 to 60
 */
public record Wishes(
    List<NoticeKind> notices, @Nullable QuietTime quiet, Reminder reminder, int silentPasses) {

  public static final int MOST_SILENT_PASSES = 60;
  public static final int USUAL_SILENT_PASSES = 10;
  public static final Wishes NONE =
      new Wishes(List.of(), null, Reminder.USUAL, USUAL_SILENT_PASSES);

  /**
   * @throws IllegalArgumentException if the number of passes is out of range
   */
  public Wishes {
    notices = List.copyOf(notices);
    if (silentPasses < 1 || silentPasses > MOST_SILENT_PASSES) {
      throw new IllegalArgumentException(
          "silent passes %d: expected 1 to %d".formatted(silentPasses, MOST_SILENT_PASSES));
    }
  }

  /** {@code at}, or the end of the quiet time that it lies in. */
  Instant due(Instant at, ZoneId zone) {
    return quiet == null ? at : quiet.after(at, zone);
  }
}

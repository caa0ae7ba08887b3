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
 */
public record Wishes(List<NoticeKind> notices, @Nullable QuietTime quiet) {

  public static final Wishes NONE = new Wishes(List.of(), null);

  public Wishes {
    notices = List.copyOf(notices);
  }

  /** {@code at}, or the end of the quiet time that it lies in. */
  Instant due(Instant at, ZoneId zone) {
    return quiet == null ? at : quiet.after(at, zone);
  }
}

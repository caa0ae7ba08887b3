package org.limbspan.notice;

import java.time.Instant;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.Rig;

/** Something that is told because its time has come. */
interface Occasion {

  NoticeKind kind();

  /** What a recipient that wants it is to be told by now, told already or not. */
  List<Timely> of(Rig rig, Recipient recipient, Instant now);

  /**
   * Something to be told.
   *
   * @param about what it tells of; told once
   * @param letter asked for only if it is told
   * @param expiresAt after that nobody needs it; null for never
   */
  record Timely(String about, Supplier<Letter> letter, @Nullable Instant expiresAt) {}
}

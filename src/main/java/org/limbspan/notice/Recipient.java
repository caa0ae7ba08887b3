package org.limbspan.notice;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * Somebody, or some program, that is told about a rig.
 *
 * @param address of a mailbox, or the URL of a webhook
 * @param paused whether nothing is written for it and nothing sent
 * @param createdAt what is older is not told
 */
public record Recipient(
    UUID id,
    long rigId,
    Channel channel,
    String address,
    Wishes wishes,
    boolean paused,
    Instant createdAt) {

  boolean wants(NoticeKind kind) {
    List<NoticeKind> notices = wishes.notices();
    return !paused && notices.contains(kind);
  }
}

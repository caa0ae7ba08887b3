package org.limbspan.notice;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A notice that a deliverer has in hand.
 *
 * @param document as it is sent, JSON
 * @param dueFirstAt when it was first due
 * @param attempts that failed before
 * @param leaseUntil until then nobody else takes it
 * @param expiresAt after that nobody needs it; null for never
 */
record Notice(
    UUID id,
    UUID recipientId,
    NoticeKind kind,
    String document,
    Instant dueFirstAt,
    int attempts,
    Instant leaseUntil,
    @Nullable Instant expiresAt) {

  boolean isExpired(Instant now) {
    return expiresAt != null && !now.isBefore(expiresAt);
  }
}

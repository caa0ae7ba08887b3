package org.limbspan.notice;

import java.time.Instant;
import java.util.UUID;

/**
 * A notice that a deliverer has in hand.
 *
 * @param document as it is sent, JSON
 * @param dueFirstAt when it was first due
 * @param attempts that failed before
 * @param leaseUntil until then nobody else takes it
 */
record Notice(
    UUID id,
    UUID recipientId,
    NoticeKind kind,
    String document,
    Instant dueFirstAt,
    int attempts,
    Instant leaseUntil) {}

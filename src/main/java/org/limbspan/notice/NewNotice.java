package org.limbspan.notice;

import java.time.Instant;
import java.util.UUID;

/**
 * A notice to be written.
 *
 * @param about what it tells of, the same in all notices about one thing
 */
record NewNotice(
    UUID id,
    UUID recipientId,
    NoticeKind kind,
    String about,
    String document,
    Instant writtenAt,
    Instant dueAt) {}

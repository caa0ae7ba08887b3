package org.limbspan.notice;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A notice to be written.
 *
 * @param about what it tells of, the same in all notices about one thing
 * @param expiresAt after that nobody needs it; null for never
 */
record NewNotice(
    UUID id,
    UUID recipientId,
    NoticeKind kind,
    String about,
    String document,
    Instant writtenAt,
    Instant dueAt,
    @Nullable Instant expiresAt) {}

package org.limbspan.notice;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What became of a notice so far.
 *
 * @param attempts how often it was tried
 * @param lastError why the last attempt failed, if it did
 * @param nextTryAt when it is tried next, if it waits
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record NoticeStand(
    UUID id,
    String kind,
    String subject,
    Instant writtenAt,
    int attempts,
    @Nullable String lastError,
    @Nullable Instant nextTryAt,
    @Nullable Instant deliveredAt,
    @Nullable Instant givenUpAt) {}

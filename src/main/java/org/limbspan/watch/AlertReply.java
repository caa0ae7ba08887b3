package org.limbspan.watch;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What the owner said of an alert.
 *
 * @param cause word of an {@link AnswerCause}
 * @param changedAt when it happened, if known
 * @param consequence what was done with it, in words
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record AlertReply(
    String cause,
    @Nullable String note,
    @Nullable Instant changedAt,
    @Nullable String consequence,
    Instant answeredAt) {}

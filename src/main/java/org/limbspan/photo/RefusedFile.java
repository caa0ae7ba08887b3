package org.limbspan.photo;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A file that gives no diameter as things stand.
 *
 * @param file its name
 * @param takenAt null if it is not known
 * @param refusedAt when it was refused last
 */
public record RefusedFile(
    String file, @Nullable Instant takenAt, PhotoAnswer.Refusal refusal, Instant refusedAt) {}

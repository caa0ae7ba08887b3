package org.limbspan.platform.jobs;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * How a job fares, by the word of all instances.
 *
 * @param failures how often it has failed since it was last done
 */
public record JobState(
    Instant due, @Nullable Instant lastDone, @Nullable Instant lastFailed, int failures) {}

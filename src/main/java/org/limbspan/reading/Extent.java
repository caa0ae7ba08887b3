package org.limbspan.reading;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * How many readings of a rig stand, and from when to when.
 *
 * @param firstAt null if there is none
 * @param lastAt null if there is none
 */
public record Extent(long count, @Nullable Instant firstAt, @Nullable Instant lastAt) {}

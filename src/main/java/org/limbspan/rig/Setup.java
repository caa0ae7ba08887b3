package org.limbspan.rig;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of time, {@code [startedAt, endedAt)}, in which nothing on the rig was touched.
 *
 * @param number place in the rig's history by time, from 0; changes when an earlier setup is
 *     entered late
 * @param startedAt empty for the first setup, open from the beginning
 * @param endedAt empty for the last one
 */
public record Setup(
    long id,
    int number,
    Optional<Instant> startedAt,
    Optional<Instant> endedAt,
    @Nullable String note) {

  /** As pages number it, from 1. */
  public int numberOnPages() {
    return number + 1;
  }

  boolean hasStartedBy(Instant at) {
    return startedAt.isEmpty() || !at.isBefore(startedAt.get());
  }
}

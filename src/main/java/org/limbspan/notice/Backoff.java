package org.limbspan.notice;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * When a notice that failed is tried again: after 1, 5, 25 and 125 minutes, then every 6 hours; not
 * after it was due for 3 days and has failed five times, so that an outage of the service itself
 * loses nothing.
 */
final class Backoff {

  static final Duration LONGEST = Duration.ofHours(6);
  static final Duration PATIENCE = Duration.ofDays(3);
  static final int FEWEST_ATTEMPTS = 5;

  private static final Duration FIRST = Duration.ofMinutes(1);
  private static final int GROWTH = 5;

  private Backoff() {}

  /**
   * The next try; empty if there is none.
   *
   * @param attempts that failed, 1 or more
   */
  static Optional<Instant> next(Instant now, int attempts, Instant dueFirstAt) {
    if (attempts >= FEWEST_ATTEMPTS && !now.isBefore(dueFirstAt.plus(PATIENCE))) {
      return Optional.empty();
    }
    return Optional.of(now.plus(delay(attempts)));
  }

  private static Duration delay(int attempts) {
    Duration delay = FIRST;
    for (int i = 1; i < attempts && delay.compareTo(LONGEST) < 0; i++) {
      delay = delay.multipliedBy(GROWTH);
    }
    return delay.compareTo(LONGEST) < 0 ? delay : LONGEST;
  }
}

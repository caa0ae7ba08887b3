package org.limbspan.platform.access;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Counts failed logins by address: after ten within a minute an address waits until the minute is
 * over. Remembers the last thousand addresses; behind a proxy all clients are one.
 */
final class Attempts {

  static final int MOST = 10;

  private static final Duration SPAN = Duration.ofMinutes(1);
  private static final int ADDRESSES = 1000;

  private final Clock clock;
  private final Map<String, Minute> minutes =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Minute> eldest) {
          return size() > ADDRESSES;
        }
      };

  Attempts(Clock clock) {
    this.clock = clock;
  }

  private record Minute(Instant began, int failures) {}

  synchronized void failed(String address) {
    Instant now = clock.instant();
    Minute minute = minutes.get(address);
    minutes.put(
        address,
        minute == null || isOver(minute, now)
            ? new Minute(now, 1)
            : new Minute(minute.began(), minute.failures() + 1));
  }

  synchronized boolean mustWait(String address) {
    Minute minute = minutes.get(address);
    return minute != null && !isOver(minute, clock.instant()) && minute.failures() >= MOST;
  }

  /** Over too if the clock was set back. */
  private static boolean isOver(Minute minute, Instant now) {
    return now.isBefore(minute.began()) || !now.isBefore(minute.began().plus(SPAN));
  }
}

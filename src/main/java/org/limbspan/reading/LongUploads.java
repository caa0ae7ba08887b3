package org.limbspan.reading;

import java.time.Duration;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;

/**
 * Minds the long uploads under way in this service, so that work which can wait gives way to them:
 * somebody watches an upload, nobody a judgement of years of readings.
 */
@Component
public class LongUploads {

  /** Who sends many files sends the next within it. */
  private static final Duration BREATH = Duration.ofSeconds(1);

  private int underWay;
  private long lastEnd = System.nanoTime() - BREATH.toNanos();

  /** Does what is part of a long upload. */
  <T> T during(Supplier<T> work) {
    change(1);
    try {
      return work.get();
    } finally {
      change(-1);
    }
  }

  /**
   * Waits until no long upload was under way for a second, but not longer than {@code patience}:
   * uploads without end must not hold up the rest for ever.
   *
   * @throws InterruptedException if the waiting thread is to end
   */
  public synchronized void giveWay(Duration patience) throws InterruptedException {
    long began = System.nanoTime();
    for (long now = began; now - began < patience.toNanos(); now = System.nanoTime()) {
      long left = patience.toNanos() - (now - began);
      long breath = underWay > 0 ? left : BREATH.toNanos() - (now - lastEnd);
      if (breath <= 0) {
        return;
      }
      wait(1 + Duration.ofNanos(Math.min(left, breath)).toMillis());
    }
  }

  private synchronized void change(int by) {
    underWay += by;
    lastEnd = System.nanoTime();
    notifyAll();
  }
}

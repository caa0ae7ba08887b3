package org.limbspan.watch;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;

/**
 * Whose turn it is to be judged: one rig after the other, but beside those that take long another
 * one. A hundred thousand readings that fit nothing take minutes, which is no reason for all the
 * other rigs to wait.
 */
final class JudgingTurns {

  private final Duration shortTurn;
  private final Map<Long, Long> begun = new HashMap<>();

  /**
   * Turns of a service.
   *
   * @param shortTurn what a rig has for itself; one that takes longer is no longer waited for
   */
  JudgingTurns(Duration shortTurn) {
    this.shortTurn = shortTurn;
  }

  /**
   * Waits for a rig's turn.
   *
   * @return whether it has come; not if the rig has one already
   * @throws InterruptedException if the waiting thread is to end
   */
  synchronized boolean begin(long rigId) throws InterruptedException {
    while (!begun.containsKey(rigId)) {
      long left = nanosLeft();
      if (left <= 0) {
        begun.put(rigId, System.nanoTime());
        return true;
      }
      wait(1 + Duration.ofNanos(left).toMillis());
    }
    return false;
  }

  synchronized void end(long rigId) {
    begun.remove(rigId);
    notifyAll();
  }

  /** Of the short turn of the latest to begin; none if there is none. */
  private long nanosLeft() {
    long now = System.nanoTime();
    return begun.values().stream()
        .mapToLong(began -> shortTurn.toNanos() - (now - began))
        .max()
        .orElse(0);
  }
}

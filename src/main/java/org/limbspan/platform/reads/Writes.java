package org.limbspan.platform.reads;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;

/** Counts what this instance may have committed. */
final class Writes {

  private final AtomicLong count = new AtomicLong();
  private final ReentrantLock lock = new ReentrantLock();
  private final Condition more = lock.newCondition();

  /** Called after a commit and before anybody is told of it. */
  void add() {
    count.incrementAndGet();
    lock.lock();
    try {
      more.signalAll();
    } finally {
      lock.unlock();
    }
  }

  long count() {
    return count.get();
  }

  /** Waits until there are others than so many, or the time is over. */
  void awaitOtherThan(long known, long millis) throws InterruptedException {
    long left = TimeUnit.MILLISECONDS.toNanos(millis);
    lock.lockInterruptibly();
    try {
      while (count.get() == known && left > 0) {
        left = more.awaitNanos(left);
      }
    } finally {
      lock.unlock();
    }
  }
}

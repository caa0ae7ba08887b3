package org.limbspan.photo;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.ReentrantLock;
import org.springframework.stereotype.Component;

/** Lets one at a time bring the readings of a rig in line with its photographs. */
@Component
class RigQueue {

  private final Map<Long, ReentrantLock> locks = new ConcurrentHashMap<>();

  /** What is done while nobody else does the same for the rig. */
  interface Work<T> {
    T run();
  }

  <T> T alone(long rigId, Work<T> work) {
    ReentrantLock lock = locks.computeIfAbsent(rigId, id -> new ReentrantLock(true));
    lock.lock();
    try {
      return work.run();
    } finally {
      lock.unlock();
    }
  }
}

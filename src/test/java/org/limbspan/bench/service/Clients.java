package org.limbspan.bench.service;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/**
 * Clients that send one thing after the other and repeat each until it is answered, as the log page
 * and a rig's own computer do. What belongs to one rig is sent by one client, in order.
 */
final class Clients implements AutoCloseable {

  private static final int COUNT = 3;

  private final List<ExecutorService> workers = new ArrayList<>();
  private final Supplier<Http> service;
  private final AtomicInteger underWay = new AtomicInteger();
  private final AtomicInteger repeats = new AtomicInteger();
  private final Map<Integer, AtomicInteger> answers = new ConcurrentSkipListMap<>();
  private final Map<String, AtomicInteger> troubles = new ConcurrentSkipListMap<>();

  /**
   * @param service whom to ask next; another one each time where there are several
   */
  Clients(Supplier<Http> service) {
    this.service = service;
    for (int i = 0; i < COUNT; i++) {
      int number = i;
      workers.add(
          Executors.newSingleThreadExecutor(
              task -> {
                Thread thread = new Thread(task, "client " + number);
                thread.setDaemon(true);
                return thread;
              }));
    }
  }

  Future<?> send(Deed deed) {
    return workers
        .get(Math.floorMod(deed.rig().hashCode(), COUNT))
        .submit(
            () -> {
              deliver(deed);
              return true;
            });
  }

  /** Waits until all of them are answered. */
  static void await(List<Future<?>> sent) throws InterruptedException {
    for (Future<?> one : sent) {
      try {
        one.get();
      } catch (ExecutionException e) {
        throw new IllegalStateException(e.getCause());
      }
    }
  }

  int underWay() {
    return underWay.get();
  }

  int repeats() {
    return repeats.get();
  }

  Map<Integer, AtomicInteger> answers() {
    return answers;
  }

  /** What was said with the statuses from 500 on. */
  Map<String, AtomicInteger> troubles() {
    return troubles;
  }

  @Override
  public void close() {
    workers.forEach(ExecutorService::shutdownNow);
  }

  private void deliver(Deed deed) throws InterruptedException {
    Random random = new Random(deed.body().hashCode());
    while (true) {
      underWay.incrementAndGet();
      Http.Reply reply = service.get().post(deed.path(), deed.type(), deed.body());
      underWay.decrementAndGet();
      answers.computeIfAbsent(reply.status(), status -> new AtomicInteger()).incrementAndGet();
      if (Deed.isDone(reply.status())) {
        return;
      }
      if (reply.status() >= 500) {
        troubles
            .computeIfAbsent(reply.status() + " " + reply.problem(), words -> new AtomicInteger())
            .incrementAndGet();
      }
      if (!Deed.isWorthAnother(reply.status())) {
        throw new IllegalStateException(
            deed.path() + " was answered by " + reply.status() + " " + reply.body());
      }
      repeats.incrementAndGet();
      Thread.sleep(20 + random.nextInt(150));
    }
  }
}

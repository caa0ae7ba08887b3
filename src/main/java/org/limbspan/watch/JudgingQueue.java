package org.limbspan.watch;

import jakarta.annotation.PreDestroy;
import java.time.Duration;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.limbspan.reading.IntakeTraffic;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.slf4j.MDC;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Judges rigs one after the other, away from the requests that asked for it; beside one that takes
 * long, another. However many facts arrive while a rig is judged, it is judged once more, not once
 * for each. Before each rig it gives way to long uploads and to many short ones, for a minute at
 * most. What a crash leaves undone shows as a judgement behind its ledger and is taken up by the
 * next round.
 */
@Component
class JudgingQueue {

  private static final Logger LOG = LoggerFactory.getLogger(JudgingQueue.class);
  private static final long GATHERING_MILLIS = 150;
  private static final long ROUND_SECONDS = 30;
  private static final long AGAIN_MILLIS = 1000;
  private static final int AT_ONCE = 2;
  private static final Duration PATIENCE = Duration.ofMinutes(1);
  private static final Duration SHORT_TURN = Duration.ofSeconds(3);

  private final JudgingRound round;
  private final IntakeTraffic traffic;
  private final JudgingTurns turns;
  private final Object gate = new Object();
  private final Set<Long> waiting = ConcurrentHashMap.newKeySet();
  private final ScheduledExecutorService worker =
      Executors.newScheduledThreadPool(AT_ONCE, task -> new Thread(task, "judging"));

  @Autowired
  JudgingQueue(JudgingRound round, IntakeTraffic traffic) {
    this(round, traffic, SHORT_TURN);
  }

  JudgingQueue(JudgingRound round, IntakeTraffic traffic, Duration shortTurn) {
    this.round = round;
    this.traffic = traffic;
    this.turns = new JudgingTurns(shortTurn);
  }

  @EventListener(ApplicationReadyEvent.class)
  void start() {
    var unused =
        worker.scheduleWithFixedDelay(
            () -> guarded("looking for rigs to judge", this::takeUpWhatIsBehind),
            0,
            ROUND_SECONDS,
            TimeUnit.SECONDS);
  }

  @PreDestroy
  void stop() {
    worker.shutdownNow();
  }

  void request(long rigId) {
    if (waiting.add(rigId)) {
      later(rigId, GATHERING_MILLIS);
    }
  }

  private void takeUpWhatIsBehind() {
    round.behind().forEach(this::request);
  }

  private void judge(long rigId) {
    try {
      giveWay();
      if (!turns.begin(rigId)) {
        later(rigId, AGAIN_MILLIS);
        return;
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      return;
    }
    waiting.remove(rigId);
    MDC.put("rigId", Long.toString(rigId));
    try {
      guarded("judging rig " + rigId, () -> round.judge(rigId));
    } finally {
      MDC.remove("rigId");
      turns.end(rigId);
    }
  }

  /** One after the other: a rush without end lets one rig pass a minute, not as many as wait. */
  private void giveWay() throws InterruptedException {
    synchronized (gate) {
      traffic.giveWay(PATIENCE);
    }
  }

  private void later(long rigId, long millis) {
    if (!worker.isShutdown()) {
      var unused = worker.schedule(() -> judge(rigId), millis, TimeUnit.MILLISECONDS);
    }
  }

  /** A round that failed is logged and tried again by the next; the worker must not die of it. */
  private static void guarded(String what, Runnable task) {
    try {
      task.run();
    } catch (RuntimeException failed) {
      LOG.error("{} failed; tried again within {} s", what, ROUND_SECONDS, failed);
    }
  }
}

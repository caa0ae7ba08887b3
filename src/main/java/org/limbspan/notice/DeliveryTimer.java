package org.limbspan.notice;

import jakarta.annotation.PreDestroy;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/** Has notices delivered: at once when something was written, and otherwise every half minute. */
@Component
class DeliveryTimer {

  private static final Logger LOG = LoggerFactory.getLogger(DeliveryTimer.class);
  private static final long ROUND_SECONDS = 30;

  private final Deliveries deliveries;
  private final ScheduledExecutorService worker =
      Executors.newSingleThreadScheduledExecutor(task -> new Thread(task, "notices"));

  DeliveryTimer(Deliveries deliveries) {
    this.deliveries = deliveries;
  }

  @EventListener(ApplicationReadyEvent.class)
  void start() {
    var unused =
        worker.scheduleWithFixedDelay(this::round, ROUND_SECONDS, ROUND_SECONDS, TimeUnit.SECONDS);
  }

  @PreDestroy
  void stop() {
    worker.shutdownNow();
  }

  /** Delivers what is due once this thread's transaction is committed. */
  void afterCommit() {
    TransactionSynchronizationManager.registerSynchronization(
        new TransactionSynchronization() {
          @Override
          public void afterCommit() {
            if (!worker.isShutdown()) {
              worker.execute(DeliveryTimer.this::round);
            }
          }
        });
  }

  /** A round that failed is logged and done again by the next; the worker must not die of it. */
  private void round() {
    try {
      deliveries.deliverDue();
    } catch (RuntimeException failed) {
      LOG.error("delivering notices failed; tried again within {} s", ROUND_SECONDS, failed);
    }
  }
}

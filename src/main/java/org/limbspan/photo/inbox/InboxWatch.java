package org.limbspan.photo.inbox;

import jakarta.annotation.PreDestroy;
import java.io.IOException;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;

/**
 * Looks into the inbox every few seconds. Looking works on every file system, also on those of
 * other computers, which send no notice of changes.
 */
class InboxWatch {

  private static final Logger LOG = LoggerFactory.getLogger(InboxWatch.class);
  private static final long PAUSE_SECONDS = 5;

  private final Inbox inbox;
  private final ScheduledExecutorService worker =
      Executors.newSingleThreadScheduledExecutor(task -> new Thread(task, "inbox"));
  private boolean failedBefore;

  InboxWatch(Inbox inbox) {
    this.inbox = inbox;
  }

  @EventListener(ApplicationReadyEvent.class)
  void start() {
    var unused =
        worker.scheduleWithFixedDelay(this::look, PAUSE_SECONDS, PAUSE_SECONDS, TimeUnit.SECONDS);
  }

  @PreDestroy
  void stop() {
    worker.shutdownNow();
  }

  /** What failed is tried again; it is told once, not every few seconds. */
  private void look() {
    try {
      inbox.takeWhatIsWhole();
      failedBefore = false;
    } catch (IOException | RuntimeException failed) {
      if (!failedBefore) {
        LOG.error("the inbox could not be emptied; tried again until it can", failed);
      }
      failedBefore = true;
    }
  }
}

package org.limbspan.dashboard;

import jakarta.annotation.PreDestroy;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.limbspan.rig.Rigs;
import org.limbspan.watch.Watch;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Tells open pages of what other instances did: looks at the stand of each rig that has one open,
 * and tells it when it is another than at the last look. A page that has it already stays as it is.
 */
@Component
class LiveLook {

  private static final Logger LOG = LoggerFactory.getLogger(LiveLook.class);
  private static final long LOOK_SECONDS = 2;

  /** Where no page is open; one that is opened has the newest already. */
  private static final long UNSEEN_SECONDS = 6;

  private final LiveReaders readers;
  private final Rigs rigs;
  private final Watch watch;
  private final TransactionTemplate transaction;
  private final Map<Long, String> seen = new HashMap<>();
  private final ScheduledExecutorService looker =
      Executors.newSingleThreadScheduledExecutor(task -> new Thread(task, "live-look"));

  /**
   * The transaction is not a read-only one, though nothing is written in it: so it counts as a
   * write of this instance, and the page that is told reads no standby that lacks what was seen.
   */
  LiveLook(LiveReaders readers, Rigs rigs, Watch watch, PlatformTransactionManager transactions) {
    this.readers = readers;
    this.rigs = rigs;
    this.watch = watch;
    this.transaction = new TransactionTemplate(transactions);
  }

  @EventListener(ApplicationReadyEvent.class)
  void start() {
    again();
  }

  private void again() {
    long pause = seen.isEmpty() ? UNSEEN_SECONDS : LOOK_SECONDS;
    try {
      var unused = looker.schedule(this::guarded, pause, TimeUnit.SECONDS);
    } catch (RejectedExecutionException stopped) {
      LOG.trace("no more looks", stopped);
    }
  }

  @PreDestroy
  void stop() {
    looker.shutdownNow();
  }

  /** A look that failed is no news; the next one comes soon. */
  private void guarded() {
    try {
      look();
    } catch (RuntimeException failed) {
      LOG.debug("could not look for news", failed);
    } finally {
      again();
    }
  }

  private void look() {
    Set<Long> open = readers.rigs();
    seen.keySet().retainAll(open);
    for (long rigId : open) {
      String stand = transaction.execute(status -> stand(rigId));
      String before = seen.put(rigId, stand);
      if (!stand.equals(before)) {
        readers.tell(rigId, "stand", stand);
      }
    }
  }

  private String stand(long rigId) {
    return LiveStand.of(rigs.revision(rigId), watch.judgementInBrief(rigs.find(rigId)).judgedAt());
  }
}

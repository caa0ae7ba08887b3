package org.limbspan.notice;

import jakarta.annotation.PreDestroy;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Writes the notices whose time has come, every minute. Each is written once, whatever instance
 * comes first, since its id follows from what it tells.
 */
@Component
class TimedNotices {

  private static final Logger LOG = LoggerFactory.getLogger(TimedNotices.class);
  private static final long ROUND_SECONDS = 60;

  private final List<Occasion> occasions;
  private final RecipientRepository recipients;
  private final Outbox outbox;
  private final NoticeWriter writer;
  private final Rigs rigs;
  private final Clock clock;
  private final TransactionTemplate writing;
  private final ScheduledExecutorService worker =
      Executors.newSingleThreadScheduledExecutor(task -> new Thread(task, "notice-times"));

  TimedNotices(
      List<Occasion> occasions,
      RecipientRepository recipients,
      Outbox outbox,
      NoticeWriter writer,
      Rigs rigs,
      Clock clock,
      PlatformTransactionManager transactions) {
    this.occasions = List.copyOf(occasions);
    this.recipients = recipients;
    this.outbox = outbox;
    this.writer = writer;
    this.rigs = rigs;
    this.clock = clock;
    this.writing = new TransactionTemplate(transactions);
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

  /** A round that failed is logged and done again by the next; the worker must not die of it. */
  private void round() {
    try {
      write();
    } catch (RuntimeException failed) {
      LOG.error("writing timed notices failed; tried again in {} s", ROUND_SECONDS, failed);
    }
  }

  /** Writes what is to be told by now. */
  void write() {
    Instant now = clock.instant();
    for (Recipient recipient : recipients.awake()) {
      for (Occasion occasion : occasions) {
        if (recipient.wants(occasion.kind())) {
          Rig rig = rigs.find(recipient.rigId());
          occasion
              .of(rig, recipient, now)
              .forEach(timely -> write(occasion.kind(), rig, recipient, timely));
        }
      }
    }
  }

  private void write(NoticeKind kind, Rig rig, Recipient recipient, Occasion.Timely timely) {
    if (outbox.isWritten(recipient.id(), kind, timely.about())) {
      return;
    }
    NoticeWriter.News news =
        new NoticeWriter.News(
            kind, timely.about(), timely.about(), timely.letter().get(), null, timely.expiresAt());
    writing.executeWithoutResult(
        status -> writer.write(news, rig, each -> each.id().equals(recipient.id())));
  }
}

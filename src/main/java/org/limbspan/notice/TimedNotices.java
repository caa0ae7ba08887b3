package org.limbspan.notice;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Writes the notices whose time has come, as a job of every minute. Each is written once even if
 * two instances did it, since its id follows from what it tells.
 */
@Component
class TimedNotices {

  private final List<Occasion> occasions;
  private final RecipientRepository recipients;
  private final Outbox outbox;
  private final NoticeWriter writer;
  private final Rigs rigs;
  private final Clock clock;
  private final TransactionTemplate writing;

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

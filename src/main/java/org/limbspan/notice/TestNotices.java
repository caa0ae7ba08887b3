package org.limbspan.notice;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.limbspan.rig.Rig;
import org.springframework.stereotype.Component;

/** Sends test notices. */
@Component
class TestNotices {

  private final NoticeWriter writer;
  private final Outbox outbox;
  private final Deliveries deliveries;
  private final NoticeStands stands;
  private final Clock clock;

  TestNotices(
      NoticeWriter writer, Outbox outbox, Deliveries deliveries, NoticeStands stands, Clock clock) {
    this.writer = writer;
    this.outbox = outbox;
    this.deliveries = deliveries;
    this.stands = stands;
    this.clock = clock;
  }

  NoticeStand send(Rig rig, Recipient recipient) {
    Letter letter =
        new Letter(
            OneLine.of(rig.name() + ": a test"),
            "Rig: " + rig.name() + "\n\nThis is a test. Notices about this rig arrive here.\n",
            "/rigs/" + rig.slug() + "/notices");
    NewNotice test =
        writer.asked(
            new NoticeWriter.News(NoticeKind.TEST, "test", "test", letter, null, null),
            rig,
            recipient);
    Instant leaseUntil = clock.instant().plus(Deliveries.LEASE).truncatedTo(ChronoUnit.MICROS);
    outbox.writeInHand(test, leaseUntil);
    deliveries.deliver(
        new Notice(
            test.id(),
            recipient.id(),
            NoticeKind.TEST,
            test.document(),
            test.dueAt(),
            0,
            leaseUntil,
            null));
    return stands.find(test.id());
  }
}

package org.limbspan.notice;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.limbspan.rig.Rigs;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * Delivers notices, each outside any transaction. What a crash leaves in hand is free again when
 * its lease ends; whether it had arrived is not known, so it is sent again, under the same id.
 */
@Component
class Deliveries {

  /** Longer than any attempt lasts. */
  static final Duration LEASE = Duration.ofMinutes(5);

  private static final Logger LOG = LoggerFactory.getLogger(Deliveries.class);

  private final Outbox outbox;
  private final RecipientRepository recipients;
  private final Rigs rigs;
  private final Clock clock;
  private final Map<Channel, Carrier> carriers = new EnumMap<>(Channel.class);

  Deliveries(
      Outbox outbox,
      RecipientRepository recipients,
      Rigs rigs,
      Clock clock,
      List<Carrier> carriers) {
    this.outbox = outbox;
    this.recipients = recipients;
    this.rigs = rigs;
    this.clock = clock;
    carriers.forEach(carrier -> this.carriers.put(carrier.channel(), carrier));
  }

  /** Delivers what is due, until nothing is. */
  void deliverDue() {
    while (!Thread.currentThread().isInterrupted()) {
      Optional<Notice> notice = claim();
      if (notice.isEmpty()) {
        return;
      }
      deliver(notice.get());
    }
  }

  private Optional<Notice> claim() {
    Instant now = clock.instant();
    return outbox.claim(now, now.plus(LEASE));
  }

  /** Delivers one that is in hand; it is put back if its recipient wants quiet. */
  void deliver(Notice notice) {
    Optional<Recipient> recipient = recipients.find(notice.recipientId());
    if (recipient.isEmpty()) {
      return; // taken away meanwhile, and the notice with it
    }
    Instant now = clock.instant();
    if (notice.isExpired(now)) {
      outbox.expired(notice, "its time had passed", now);
      return;
    }
    Instant dueAt = notice.kind() == NoticeKind.TEST ? now : due(recipient.get(), now);
    if (dueAt.isAfter(now)) {
      outbox.postponed(notice, dueAt);
      return;
    }
    try {
      carry(notice, recipient.get());
    } catch (Undelivered failed) {
      putBack(notice, recipient.get(), failed.reason());
    } catch (RuntimeException broken) {
      putBack(notice, recipient.get(), "the service failed: " + broken.getClass().getSimpleName());
      throw broken;
    }
  }

  private void carry(Notice notice, Recipient recipient) throws Undelivered {
    Objects.requireNonNull(carriers.get(recipient.channel()))
        .carry(notice, recipient, recipients.secret(recipient.id()));
    outbox.delivered(notice, clock.instant());
    LOG.info(
        "notice {} ({}) delivered to recipient {}",
        notice.id(),
        notice.kind().label(),
        recipient.id());
  }

  /** Says no address, and not the reason either: servers put addresses into it. */
  private void putBack(Notice notice, Recipient recipient, String reason) {
    Instant now = clock.instant();
    int attempts = notice.attempts() + 1;
    Optional<Instant> next =
        notice.kind() == NoticeKind.TEST
            ? Optional.empty()
            : Backoff.next(now, attempts, notice.dueFirstAt());
    next.ifPresentOrElse(
        at -> outbox.failed(notice, reason, due(recipient, at)),
        () -> outbox.givenUp(notice, reason, now));
    LOG.warn(
        "notice {} ({}) not delivered to recipient {}: attempt {}, {}",
        notice.id(),
        notice.kind().label(),
        recipient.id(),
        attempts,
        next.map(at -> "next try " + at).orElse("given up"));
  }

  private Instant due(Recipient recipient, Instant at) {
    return recipient.wishes().due(at, rigs.find(recipient.rigId()).timeZone());
  }
}

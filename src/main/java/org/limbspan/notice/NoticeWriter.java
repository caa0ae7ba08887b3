package org.limbspan.notice;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.Rig;
import org.limbspan.watch.Alert;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.json.JsonMapper;

/** Writes notices into the outbox, one for each recipient that is told. */
@Component
class NoticeWriter {

  private final RecipientRepository recipients;
  private final Outbox outbox;
  private final DeliveryTimer timer;
  private final NoticeProperties properties;
  private final JsonMapper json;
  private final Clock clock;

  NoticeWriter(
      RecipientRepository recipients,
      Outbox outbox,
      DeliveryTimer timer,
      NoticeProperties properties,
      JsonMapper json,
      Clock clock) {
    this.recipients = recipients;
    this.outbox = outbox;
    this.timer = timer;
    this.properties = properties;
    this.json = json;
    this.clock = clock;
  }

  /**
   * Something to be told.
   *
   * @param about what it tells of, the same in all notices about one thing
   * @param key with kind and recipient what the notice's id follows from
   * @param expiresAt after that nobody needs it; null for never
   */
  record News(
      NoticeKind kind,
      String about,
      String key,
      Letter letter,
      @Nullable Alert alert,
      @Nullable Instant expiresAt) {}

  /** Within a transaction: writes for the recipients of a rig that are to be told. */
  @Transactional(propagation = Propagation.MANDATORY)
  public void write(News news, Rig rig, Predicate<Recipient> told) {
    Instant now = clock.instant();
    boolean written = false;
    for (Recipient recipient : recipients.ofRig(rig.id())) {
      if (told.test(recipient)) {
        Instant dueAt = recipient.wishes().due(now, rig.timeZone());
        written |= outbox.write(notice(id(recipient, news), news, rig, recipient, now, dueAt));
      }
    }
    if (written) {
      timer.afterCommit();
    }
  }

  /** A notice of its own, asked for now. */
  NewNotice asked(News news, Rig rig, Recipient recipient) {
    Instant now = clock.instant();
    return notice(UUID.randomUUID(), news, rig, recipient, now, now);
  }

  private static UUID id(Recipient recipient, News news) {
    String name = recipient.id() + " " + news.kind().label() + " " + news.key();
    return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
  }

  private NewNotice notice(
      UUID id, News news, Rig rig, Recipient recipient, Instant now, Instant dueAt) {
    NoticeDocument document =
        new NoticeDocument(
            id,
            news.kind().label(),
            NoticeDocument.RigName.of(rig),
            now,
            news.letter().subject(),
            news.letter().text(),
            properties.page(news.letter().page()).orElse(null),
            news.alert());
    return new NewNotice(
        id,
        recipient.id(),
        news.kind(),
        news.about(),
        json.writeValueAsString(document),
        now,
        dueAt,
        news.expiresAt());
  }
}

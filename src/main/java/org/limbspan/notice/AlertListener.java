package org.limbspan.notice;

import java.time.temporal.ChronoUnit;
import java.util.function.Predicate;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.watch.Alert;
import org.limbspan.watch.AlertRaised;
import org.limbspan.watch.AlertSettled;
import org.limbspan.watch.AlertWithdrawn;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Writes down what is to be told of alerts, within the transaction that judges: nothing is lost,
 * and nothing is told that was rolled back.
 *
 * <p>An alert whose evidence is older than the recipient is not told, so that old readings entered
 * in bulk do not come as a flood. That one is taken back is told to whoever was told of it.
 */
@Component
class AlertListener {

  private final NoticeWriter writer;
  private final Rigs rigs;
  private final Outbox outbox;

  AlertListener(NoticeWriter writer, Rigs rigs, Outbox outbox) {
    this.writer = writer;
    this.rigs = rigs;
    this.outbox = outbox;
  }

  @EventListener
  void on(AlertRaised news) {
    Rig rig = rigs.find(news.rigId());
    write(
        NoticeKind.ALERT_RAISED,
        rig,
        AlertLetters.raised(rig, news.alert()),
        news.alert(),
        recipient -> recipient.wants(NoticeKind.ALERT_RAISED) && isNewTo(recipient, news.alert()));
  }

  @EventListener
  void on(AlertSettled news) {
    Rig rig = rigs.find(news.rigId());
    write(
        NoticeKind.ALERT_SETTLED,
        rig,
        AlertLetters.settled(rig, news.alert()),
        news.alert(),
        recipient -> recipient.wants(NoticeKind.ALERT_SETTLED) && isNewTo(recipient, news.alert()));
  }

  @EventListener
  void on(AlertWithdrawn news) {
    Rig rig = rigs.find(news.rigId());
    write(
        NoticeKind.ALERT_WITHDRAWN,
        rig,
        AlertLetters.withdrawn(rig, news.alert()),
        news.alert(),
        recipient ->
            recipient.wants(NoticeKind.ALERT_RAISED)
                && outbox.isWritten(recipient.id(), NoticeKind.ALERT_RAISED, about(news.alert())));
  }

  private void write(
      NoticeKind kind, Rig rig, Letter letter, Alert alert, Predicate<Recipient> told) {
    writer.write(
        new NoticeWriter.News(
            kind, about(alert), alert.id() + " " + about(alert), letter, alert, null),
        rig,
        told);
  }

  private static boolean isNewTo(Recipient recipient, Alert alert) {
    return !alert.evidenceAt().isBefore(recipient.createdAt());
  }

  /** The alert through its life: its id may change while nobody has answered. */
  private static String about(Alert alert) {
    return alert.kind() + " raised " + alert.raisedAt().truncatedTo(ChronoUnit.MICROS);
  }
}

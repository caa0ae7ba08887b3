package org.limbspan.watch;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What an owner said of an alert: a fact of the ledger, never changed. */
@Entity
@Table(name = "alert_answer")
class AlertAnswerEntity {

  @Id
  @GeneratedValue(strategy = GenerationType.IDENTITY)
  private @Nullable Long id;

  @Column(name = "rig_id")
  private long rigId;

  @Column(name = "alert_id")
  private UUID alertId;

  private String cause;

  private @Nullable String note;

  @Column(name = "changed_at")
  private @Nullable Instant changedAt;

  private @Nullable String consequence;

  @Column(name = "answered_at")
  private Instant answeredAt;

  /** For the persistence provider. */
  @SuppressWarnings("NullAway.Init")
  protected AlertAnswerEntity() {}

  AlertAnswerEntity(long rigId, UUID alertId, AlertReply reply) {
    this.rigId = rigId;
    this.alertId = alertId;
    this.cause = reply.cause();
    this.note = reply.note();
    this.changedAt = reply.changedAt();
    this.consequence = reply.consequence();
    this.answeredAt = reply.answeredAt();
  }

  UUID alertId() {
    return alertId;
  }

  AlertReply reply() {
    return new AlertReply(cause, note, changedAt, consequence, answeredAt);
  }
}

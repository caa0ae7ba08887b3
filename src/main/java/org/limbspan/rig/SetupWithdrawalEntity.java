package org.limbspan.rig;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.hibernate.annotations.Immutable;

@Entity
@Immutable
@Table(name = "setup_withdrawal")
class SetupWithdrawalEntity {

  @Id
  @SuppressWarnings("UnusedVariable") // a column, for queries
  private long setupId;

  @SuppressWarnings("UnusedVariable") // a column, for queries
  private String reason;

  @SuppressWarnings("UnusedVariable") // a column, for queries
  private Instant withdrawnAt;

  /** Only for the object mapper, which fills every field. */
  @SuppressWarnings("NullAway.Init")
  protected SetupWithdrawalEntity() {}

  SetupWithdrawalEntity(long setupId, String reason, Instant withdrawnAt) {
    this.setupId = setupId;
    this.reason = reason;
    this.withdrawnAt = withdrawnAt;
  }
}

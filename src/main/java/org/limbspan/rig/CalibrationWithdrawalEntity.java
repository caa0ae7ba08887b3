package org.limbspan.rig;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.hibernate.annotations.Immutable;

@Entity
@Immutable
@Table(name = "calibration_withdrawal")
class CalibrationWithdrawalEntity {

  @Id
  @SuppressWarnings("UnusedVariable") // a column, for queries
  private long calibrationId;

  @SuppressWarnings("UnusedVariable") // a column, for queries
  private String reason;

  @SuppressWarnings("UnusedVariable") // a column, for queries
  private Instant withdrawnAt;

  /** Only for the object mapper, which fills every field. */
  @SuppressWarnings("NullAway.Init")
  protected CalibrationWithdrawalEntity() {}

  CalibrationWithdrawalEntity(long calibrationId, String reason, Instant withdrawnAt) {
    this.calibrationId = calibrationId;
    this.reason = reason;
    this.withdrawnAt = withdrawnAt;
  }
}

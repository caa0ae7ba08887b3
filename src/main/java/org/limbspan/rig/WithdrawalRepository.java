package org.limbspan.rig;

import jakarta.persistence.EntityManager;
import java.time.Instant;
import org.springframework.stereotype.Repository;

/** Facts that take other facts back. */
@Repository
class WithdrawalRepository {

  private final EntityManager entities;

  WithdrawalRepository(EntityManager entities) {
    this.entities = entities;
  }

  void withdrawSetup(long setupId, String reason, Instant at) {
    entities.persist(new SetupWithdrawalEntity(setupId, reason, at));
  }

  void withdrawCalibration(long calibrationId, String reason, Instant at) {
    entities.persist(new CalibrationWithdrawalEntity(calibrationId, reason, at));
  }
}

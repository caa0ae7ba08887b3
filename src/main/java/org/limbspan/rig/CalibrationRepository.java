package org.limbspan.rig;

import java.util.List;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface CalibrationRepository extends Repository<CalibrationEntity, Long> {

  CalibrationEntity save(CalibrationEntity calibration);

  /** Every version, withdrawn ones too, in an order that does not depend on when they came. */
  @Query(
      """
      select c from CalibrationEntity c
      where c.rigId = :rigId
      order by c.takenAt, c.separationArcmin nulls first, c.version
      """)
  List<CalibrationEntity> findAll(long rigId);

  /** Those of {@link #findAll} that were not taken back. */
  @Query(
      """
      select c from CalibrationEntity c
      where c.rigId = :rigId
        and not exists (select 1 from CalibrationWithdrawalEntity w where w.calibrationId = c.id)
      order by c.takenAt, c.separationArcmin nulls first, c.version
      """)
  List<CalibrationEntity> findStanding(long rigId);

  @Query(
      """
      select c.id from CalibrationEntity c, CalibrationWithdrawalEntity w
      where c.rigId = :rigId and w.calibrationId = c.id
      """)
  List<Long> findWithdrawnIds(long rigId);
}

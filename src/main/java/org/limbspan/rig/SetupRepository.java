package org.limbspan.rig;

import java.util.List;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface SetupRepository extends Repository<SetupEntity, Long> {

  SetupEntity save(SetupEntity setup);

  /** Every version, withdrawn ones too, by time and version. */
  @Query(
      """
      select s from SetupEntity s
      where s.rigId = :rigId
      order by s.startedAt nulls first, s.version
      """)
  List<SetupEntity> findAll(long rigId);

  /** Those of {@link #findAll} that were not taken back. */
  @Query(
      """
      select s from SetupEntity s
      where s.rigId = :rigId
        and not exists (select 1 from SetupWithdrawalEntity w where w.setupId = s.id)
      order by s.startedAt nulls first, s.version
      """)
  List<SetupEntity> findStanding(long rigId);

  @Query(
      """
      select s.id from SetupEntity s, SetupWithdrawalEntity w
      where s.rigId = :rigId and w.setupId = s.id
      """)
  List<Long> findWithdrawnIds(long rigId);
}

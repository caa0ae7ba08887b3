package org.limbspan.rig;

import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Counts the changes of each rig's ledger and lets one writer at a time to it. */
@Repository
class LedgerRevision {

  private static final String LOCK =
      """
      select ledger_revision from rig where id = :rigId for no key update
      """;

  private static final String ADVANCE =
      """
      update rig set ledger_revision = ledger_revision + 1
      where id = :rigId
      returning ledger_revision
      """;

  private static final String READ =
      """
      select ledger_revision from rig where id = :rigId
      """;

  private static final String ALL =
      """
      select id, ledger_revision from rig order by id
      """;

  private final JdbcClient jdbc;

  LedgerRevision(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  long lock(long rigId) {
    return query(LOCK, rigId);
  }

  long advance(long rigId) {
    return query(ADVANCE, rigId);
  }

  long read(long rigId) {
    return query(READ, rigId);
  }

  /** Of all rigs, by id. */
  Map<Long, Long> all() {
    Map<Long, Long> revisions = new LinkedHashMap<>();
    jdbc.sql(ALL)
        .query(
            row -> {
              revisions.put(row.getLong("id"), row.getLong("ledger_revision"));
            });
    return revisions;
  }

  private long query(String sql, long rigId) {
    return jdbc.sql(sql).param("rigId", rigId).query(Long.class).single();
  }
}

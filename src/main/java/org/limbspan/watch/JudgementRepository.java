package org.limbspan.watch;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.databind.json.JsonMapper;

/** Keeps the newest judgement of each rig. */
@Repository
class JudgementRepository {

  private static final String LOCK =
      """
      select pg_advisory_xact_lock(hashtextextended('limbspan.judgement', :rigId))
      """;

  private static final String SAVE =
      """
      insert into judgement (rig_id, revision, method, judged_at, document)
      values (:rigId, :revision, :method, :judgedAt, cast(:document as jsonb))
      on conflict (rig_id) do update
        set revision = excluded.revision,
            method = excluded.method,
            judged_at = excluded.judged_at,
            document = excluded.document
      """;

  private static final String FIND =
      """
      select revision, method, judged_at, document from judgement where rig_id = :rigId
      """;

  private static final String REFLECTS =
      """
      select exists (
        select from judgement
        where rig_id = :rigId and method = :method and revision >= :revision
      )
      """;

  private final JdbcClient jdbc;
  private final JsonMapper json;

  JudgementRepository(JdbcClient jdbc, JsonMapper json) {
    this.jdbc = jdbc;
    this.json = json;
  }

  /** Until the end of the transaction nobody else writes a judgement of this rig. */
  void lock(long rigId) {
    jdbc.sql(LOCK).param("rigId", rigId).query((row, number) -> true).single();
  }

  void save(long rigId, long revision, Instant judgedAt, JudgementDocument document) {
    int rows =
        jdbc.sql(SAVE)
            .param("rigId", rigId)
            .param("revision", revision)
            .param("method", JudgementDocument.METHOD)
            .param("judgedAt", OffsetDateTime.ofInstant(judgedAt, ZoneOffset.UTC))
            .param("document", json.writeValueAsString(document))
            .update();
    if (rows != 1) {
      throw new IllegalStateException("judgement of rig " + rigId + ": " + rows + " rows written");
    }
  }

  /** Whether a rig's judgement is of this method and not behind a revision of its ledger. */
  boolean reflects(long rigId, long revision) {
    return jdbc.sql(REFLECTS)
        .param("rigId", rigId)
        .param("method", JudgementDocument.METHOD)
        .param("revision", revision)
        .query(Boolean.class)
        .single();
  }

  Optional<Kept> find(long rigId) {
    List<Kept> rows = jdbc.sql(FIND).param("rigId", rigId).query(this::kept).list();
    return rows.stream().findFirst();
  }

  private Kept kept(ResultSet row, int number) throws SQLException {
    return new Kept(
        row.getLong("revision"),
        row.getInt("method"),
        row.getObject("judged_at", OffsetDateTime.class).toInstant(),
        json.readValue(row.getString("document"), JudgementDocument.class));
  }

  /** A judgement as it lies in the table. */
  record Kept(long revision, int method, Instant judgedAt, JudgementDocument document) {

    boolean reflects(long ledgerRevision) {
      return method == JudgementDocument.METHOD && revision >= ledgerRevision;
    }
  }
}

package org.limbspan.watch;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.databind.json.JsonMapper;

/** Keeps the alerts of each rig as the last judgement left them. */
@Repository
class AlertRepository {

  private static final String DELETE =
      """
      delete from alert where rig_id = :rigId and id = :id
      """;

  private static final String INSERT =
      """
      insert into alert
        (id, rig_id, kind, onset_from, onset_to, evidence_at, raised_at, standing, document)
      values
        (:id, :rigId, :kind, :onsetFrom, :onsetTo, :evidenceAt, :raisedAt, :standing,
         cast(:document as jsonb))
      """;

  private static final String LIST =
      """
      select standing, document from alert
      where rig_id = :rigId
      order by evidence_at, kind, id
      """;

  private final JdbcClient jdbc;
  private final JsonMapper json;

  AlertRepository(JdbcClient jdbc, JsonMapper json) {
    this.jdbc = jdbc;
    this.json = json;
  }

  /** Puts the alerts in place of those that are there; what is the same is left as it is. */
  void replaceAll(long rigId, List<Kept> there, List<Kept> alerts) {
    there.stream().filter(kept -> !alerts.contains(kept)).forEach(kept -> delete(rigId, kept));
    alerts.stream().filter(kept -> !there.contains(kept)).forEach(kept -> insert(rigId, kept));
  }

  private void delete(long rigId, Kept kept) {
    jdbc.sql(DELETE).param("rigId", rigId).param("id", kept.id()).update();
  }

  private void insert(long rigId, Kept kept) {
    Alert alert = kept.alert();
    jdbc.sql(INSERT)
        .param("id", alert.id())
        .param("rigId", rigId)
        .param("kind", alert.kind())
        .param("onsetFrom", utc(alert.onsetFrom()))
        .param("onsetTo", utc(alert.onsetTo()))
        .param("evidenceAt", utc(alert.evidenceAt()))
        .param("raisedAt", utc(alert.raisedAt()))
        .param("standing", kept.standing())
        .param("document", json.writeValueAsString(alert))
        .update();
  }

  List<Kept> list(long rigId) {
    return jdbc.sql(LIST).param("rigId", rigId).query(this::kept).list();
  }

  private Kept kept(ResultSet row, int number) throws SQLException {
    return new Kept(
        json.readValue(row.getString("document"), Alert.class), row.getBoolean("standing"));
  }

  private static OffsetDateTime utc(Instant instant) {
    return OffsetDateTime.ofInstant(instant, ZoneOffset.UTC);
  }

  /**
   * An alert and whether the last judgement still finds it.
   *
   * @param standing false for one that was answered and has gone since
   */
  record Kept(Alert alert, boolean standing) {

    UUID id() {
      return alert.id();
    }
  }
}

package org.limbspan.photo;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/**
 * Files that give no diameter: those that were refused when they came, and photographs that are
 * held but refused by the newest method. A file that is measured meanwhile is none of them.
 */
@Repository
class RefusalStore {

  /** Of a rig; the oldest beyond it are forgotten. */
  static final int MOST_KEPT = 500;

  private static final String TELL =
      """
      insert into photo_refusal (rig_id, sha256, file_name, taken_at, code, reason, reason_on_pages,
        question, question_on_pages, refused_at)
      values (:rigId, :sha256, :fileName, :takenAt, :code, :reason, :reasonOnPages, :question,
        :questionOnPages, :refusedAt)
      on conflict (rig_id, sha256) do update set
        file_name = excluded.file_name,
        taken_at = excluded.taken_at,
        code = excluded.code,
        reason = excluded.reason,
        reason_on_pages = excluded.reason_on_pages,
        question = excluded.question,
        question_on_pages = excluded.question_on_pages,
        refused_at = excluded.refused_at
      """;

  private static final String FORGET =
      """
      delete from photo_refusal where rig_id = :rigId and id in (
        select id from photo_refusal where rig_id = :rigId
        order by refused_at desc, id desc offset :most)
      """;

  private static final String REFUSED =
      """
      select * from (
        select r.file_name, r.taken_at, r.code, r.reason, r.reason_on_pages, r.question,
          r.question_on_pages, r.refused_at
        from photo_refusal r
        where r.rig_id = :rigId
          and not exists (select from photo p
            where p.rig_id = r.rig_id and p.sha256 = r.sha256
              and not exists (select from photo_withdrawal w where w.photo_id = p.id))
        union all
        select p.file_name, p.taken_at, 'refused-by-newer-method', m.reason, m.reason, null, null,
          m.measured_at
        from photo_measurement m join photo p on p.id = m.photo_id
        where m.outcome = 'refused' and p.rig_id = :rigId
          and not exists (select from photo_measurement n
            where n.photo_id = m.photo_id and n.method > m.method)
          and not exists (select from photo_withdrawal w where w.photo_id = p.id)
      ) each
      """;

  private static final String SINCE =
      REFUSED
          + """
          where refused_at >= :since
          order by refused_at desc, taken_at desc nulls last, file_name
          limit :limit
          """;

  private static final String TAKEN =
      REFUSED
          + """
          where taken_at > :after and taken_at < :before
          order by taken_at, file_name
          limit :limit
          """;

  private final JdbcClient jdbc;

  RefusalStore(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  /** Writes a refusal down in place of an earlier one of the same file. */
  void tell(long rigId, String sha256, RefusedFile refused) {
    PhotoAnswer.Refusal why = refused.refusal();
    Instant takenAt = refused.takenAt();
    jdbc.sql(TELL)
        .param("rigId", rigId)
        .param("sha256", sha256)
        .param("fileName", refused.file())
        .param("takenAt", takenAt == null ? null : PhotoStore.utc(takenAt))
        .param("code", why.code())
        .param("reason", why.reason())
        .param("reasonOnPages", why.reasonOnPages())
        .param("question", why.question())
        .param("questionOnPages", why.questionOnPages())
        .param("refusedAt", PhotoStore.utc(refused.refusedAt()))
        .update();
  }

  /** Leaves the newest of a rig. */
  void forgetOldest(long rigId) {
    jdbc.sql(FORGET).param("rigId", rigId).param("most", MOST_KEPT).update();
  }

  /** Those refused since then, the latest first. */
  List<RefusedFile> since(long rigId, Instant since, int limit) {
    return jdbc.sql(SINCE)
        .param("rigId", rigId)
        .param("since", PhotoStore.utc(since))
        .param("limit", limit)
        .query(RefusalStore::refused)
        .list();
  }

  /** Those taken between two instants, by time. */
  List<RefusedFile> taken(long rigId, Instant after, Instant before, int limit) {
    return jdbc.sql(TAKEN)
        .param("rigId", rigId)
        .param("after", PhotoStore.utc(after))
        .param("before", PhotoStore.utc(before))
        .param("limit", limit)
        .query(RefusalStore::refused)
        .list();
  }

  private static RefusedFile refused(ResultSet row, int number) throws SQLException {
    OffsetDateTime takenAt = row.getObject("taken_at", OffsetDateTime.class);
    return new RefusedFile(
        row.getString("file_name"),
        takenAt == null ? null : takenAt.toInstant(),
        new PhotoAnswer.Refusal(
            row.getString("code"),
            row.getString("reason"),
            row.getString("reason_on_pages"),
            row.getString("question"),
            row.getString("question_on_pages")),
        PhotoStore.instant(row, "refused_at"));
  }
}

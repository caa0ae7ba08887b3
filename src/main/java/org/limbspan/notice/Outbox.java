package org.limbspan.notice;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;

/**
 * Keeps the notices, and gives each to one deliverer at a time: the oldest of each recipient that
 * waits, never a younger one before it.
 */
@Repository
class Outbox {

  private static final String INSERT =
      """
      insert into notice
        (id, recipient_id, kind, about, document, written_at, due_first_at, due_at, lease_until,
         expires_at)
      values
        (:id, :recipientId, :kind, :about, :document, :writtenAt, :dueAt, :dueAt, :leaseUntil,
         :expiresAt)
      on conflict (id) do nothing
      """;

  private static final String CLAIM =
      """
      update notice
      set lease_until = :leaseUntil
      where id = (
        select n.id
        from notice n
        join notice_recipient r on r.id = n.recipient_id and not r.paused
        where n.delivered_at is null and n.given_up_at is null
          and n.due_at <= :now
          and (n.lease_until is null or n.lease_until <= :now)
          and not exists (
            select from notice older
            where older.recipient_id = n.recipient_id and older.number < n.number
              and older.delivered_at is null and older.given_up_at is null
              and older.kind <> 'test' and n.kind <> 'test')
        order by n.due_at, n.number
        limit 1
        for update of n skip locked)
      returning id, recipient_id, kind, document, due_first_at, attempts, lease_until, expires_at
      """;

  private static final String DELIVERED =
      """
      update notice
      set delivered_at = :now, attempts = attempts + 1, last_error = null, lease_until = null,
        given_up_at = null
      where id = :id and delivered_at is null
      """;

  private static final String TRIED =
      """
      update notice
      set attempts = attempts + 1, last_error = :error, due_at = :dueAt, given_up_at = :givenUpAt,
        lease_until = null
      where id = :id and lease_until = :leaseUntil and delivered_at is null
      """;

  private static final String POSTPONED =
      """
      update notice set due_at = :dueAt, lease_until = null
      where id = :id and lease_until = :leaseUntil and delivered_at is null
      """;

  private static final String EXPIRED =
      """
      update notice
      set given_up_at = :now, last_error = coalesce(last_error, :why), lease_until = null
      where id = :id and lease_until = :leaseUntil and delivered_at is null
      """;

  private static final String TOLD =
      """
      select exists (
        select from notice
        where recipient_id = :recipientId and kind = :kind and about = :about)
      """;

  private final JdbcClient jdbc;

  Outbox(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  /** Whether it was written; not if it is held already. */
  boolean write(NewNotice notice) {
    return insert(notice, null);
  }

  /** The same, in hand from the beginning. */
  void writeInHand(NewNotice notice, Instant leaseUntil) {
    insert(notice, leaseUntil);
  }

  private boolean insert(NewNotice notice, @Nullable Instant leaseUntil) {
    return jdbc.sql(INSERT)
            .param("id", notice.id())
            .param("recipientId", notice.recipientId())
            .param("kind", notice.kind().label())
            .param("about", notice.about())
            .param("document", notice.document())
            .param("writtenAt", Utc.of(notice.writtenAt()))
            .param("dueAt", Utc.of(notice.dueAt()))
            .param(
                "expiresAt",
                notice.expiresAt() == null ? null : Utc.of(notice.expiresAt()),
                TIMESTAMP)
            .param("leaseUntil", leaseUntil == null ? null : Utc.of(leaseUntil), TIMESTAMP)
            .update()
        == 1;
  }

  /** One that is due and that nobody has in hand, from now until then in the caller's. */
  @Transactional
  public Optional<Notice> claim(Instant now, Instant leaseUntil) {
    return jdbc.sql(CLAIM)
        .param("now", Utc.of(now))
        .param("leaseUntil", Utc.of(leaseUntil))
        .query(Outbox::notice)
        .optional();
  }

  void delivered(Notice notice, Instant now) {
    jdbc.sql(DELIVERED).param("id", notice.id()).param("now", Utc.of(now)).update();
  }

  /** An attempt failed; it is tried again then. */
  void failed(Notice notice, String error, Instant dueAt) {
    tried(notice, error, dueAt, null);
  }

  /** An attempt failed, and was the last. */
  void givenUp(Notice notice, String error, Instant now) {
    tried(notice, error, now, now);
  }

  /** Not tried: nobody needs it any more. */
  void expired(Notice notice, String why, Instant now) {
    inHand(EXPIRED, notice).param("why", why).param("now", Utc.of(now)).update();
  }

  private void tried(Notice notice, String error, Instant dueAt, @Nullable Instant givenUpAt) {
    inHand(TRIED, notice)
        .param("error", error)
        .param("dueAt", Utc.of(dueAt))
        .param("givenUpAt", givenUpAt == null ? null : Utc.of(givenUpAt), TIMESTAMP)
        .update();
  }

  /** Not tried; it is due then. */
  void postponed(Notice notice, Instant dueAt) {
    inHand(POSTPONED, notice).param("dueAt", Utc.of(dueAt)).update();
  }

  private JdbcClient.StatementSpec inHand(String sql, Notice notice) {
    return jdbc.sql(sql).param("id", notice.id()).param("leaseUntil", Utc.of(notice.leaseUntil()));
  }

  /** Whether a notice of that kind about that was written for the recipient. */
  boolean isWritten(UUID recipientId, NoticeKind kind, String about) {
    return jdbc.sql(TOLD)
        .param("recipientId", recipientId)
        .param("kind", kind.label())
        .param("about", about)
        .query(Boolean.class)
        .single();
  }

  private static Notice notice(ResultSet row, int number) throws SQLException {
    OffsetDateTime expiresAt = row.getObject("expires_at", OffsetDateTime.class);
    return new Notice(
        row.getObject("id", UUID.class),
        row.getObject("recipient_id", UUID.class),
        NoticeKind.ofLabel(row.getString("kind")),
        row.getString("document"),
        row.getObject("due_first_at", OffsetDateTime.class).toInstant(),
        row.getInt("attempts"),
        row.getObject("lease_until", OffsetDateTime.class).toInstant(),
        expiresAt == null ? null : expiresAt.toInstant());
  }

  private static final int TIMESTAMP = java.sql.Types.TIMESTAMP_WITH_TIMEZONE;
}

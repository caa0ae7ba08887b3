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

/** What became of the notices, for whoever asks. */
@Repository
class NoticeStands {

  private static final String SELECT =
      """
      select id, kind, cast(document as jsonb) ->> 'subject' as subject, written_at, attempts,
        last_error, due_at, delivered_at, given_up_at
      from notice
      """;

  private static final String ONE = SELECT + "where id = :id";

  private static final String DELIVERED =
      SELECT
          + """
          where recipient_id = :recipientId and delivered_at is not null
          order by delivered_at desc, number desc limit 1
          """;

  private static final String WAITING =
      SELECT
          + """
          where recipient_id = :recipientId and delivered_at is null and given_up_at is null
          order by number limit 1
          """;

  private static final String GIVEN_UP =
      SELECT
          + """
          where recipient_id = :recipientId and given_up_at is not null
          order by given_up_at desc, number desc limit 1
          """;

  private static final String COUNTS =
      """
      select count(*) filter (where delivered_at is null and given_up_at is null) as waiting,
        count(given_up_at) as given_up
      from notice where recipient_id = :recipientId
      """;

  private static final String FAILING =
      """
      select count(distinct recipient_id) from notice
      where delivered_at is null and given_up_at is null and attempts > 0
      """;

  private final JdbcClient jdbc;

  NoticeStands(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  RecipientStand of(Recipient recipient) {
    Counts counts =
        jdbc.sql(COUNTS)
            .param("recipientId", recipient.id())
            .query((row, number) -> new Counts(row.getLong("waiting"), row.getLong("given_up")))
            .single();
    return new RecipientStand(
        recipient,
        first(DELIVERED, recipient),
        counts.waiting(),
        first(WAITING, recipient),
        counts.givenUp(),
        first(GIVEN_UP, recipient));
  }

  NoticeStand find(UUID id) {
    return jdbc.sql(ONE).param("id", id).query(NoticeStands::stand).single();
  }

  /** How many recipients have a notice that was tried in vain and waits. */
  long failingRecipients() {
    return jdbc.sql(FAILING).query(Long.class).single();
  }

  private Optional<NoticeStand> first(String sql, Recipient recipient) {
    return jdbc.sql(sql).param("recipientId", recipient.id()).query(NoticeStands::stand).optional();
  }

  private static NoticeStand stand(ResultSet row, int number) throws SQLException {
    Instant deliveredAt = instant(row, "delivered_at");
    Instant givenUpAt = instant(row, "given_up_at");
    return new NoticeStand(
        row.getObject("id", UUID.class),
        row.getString("kind"),
        row.getString("subject"),
        row.getObject("written_at", OffsetDateTime.class).toInstant(),
        row.getInt("attempts"),
        row.getString("last_error"),
        deliveredAt == null && givenUpAt == null ? instant(row, "due_at") : null,
        deliveredAt,
        givenUpAt);
  }

  private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
    OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
    return at == null ? null : at.toInstant();
  }

  private record Counts(long waiting, long givenUp) {}
}

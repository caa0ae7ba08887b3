package org.limbspan.notice;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Keeps the recipients. */
@Repository
class RecipientRepository {

  private static final String COLUMNS =
      "id, rig_id, channel, address, notices, quiet_from, quiet_to, reminder_minutes,"
          + " reminder_places, silent_passes, paused, created_at";

  private static final String INSERT =
      """
      insert into notice_recipient
        (id, rig_id, channel, address, secret, notices, quiet_from, quiet_to, reminder_minutes,
         reminder_places, silent_passes, created_at)
      values
        (:id, :rigId, :channel, :address, :secret, :notices, :quietFrom, :quietTo, :reminderMinutes,
         :reminderPlaces, :silentPasses, :createdAt)
      on conflict (rig_id, channel, address) do nothing
      """;

  private static final String CHANGE =
      """
      update notice_recipient
      set notices = :notices, quiet_from = :quietFrom, quiet_to = :quietTo,
        reminder_minutes = :reminderMinutes, reminder_places = :reminderPlaces,
        silent_passes = :silentPasses, paused = :paused
      where rig_id = :rigId and id = :id
      """;

  private static final String DELETE =
      """
      delete from notice_recipient where rig_id = :rigId and id = :id
      """;

  private static final String OF_RIG =
      """
      select %s from notice_recipient where rig_id = :rigId order by created_at, id
      """
          .formatted(COLUMNS);

  private static final String ALL =
      """
      select %s from notice_recipient where not paused order by rig_id, created_at, id
      """
          .formatted(COLUMNS);

  private static final String BY_ID =
      """
      select %s from notice_recipient where id = :id
      """
          .formatted(COLUMNS);

  private static final String SECRET =
      """
      select secret from notice_recipient where id = :id and secret is not null
      """;

  private final JdbcClient jdbc;

  RecipientRepository(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  /** Whether it was entered; not if the rig has one with that address. */
  boolean insert(Recipient recipient, @Nullable String secret) {
    return wishes(jdbc.sql(INSERT), recipient.wishes())
            .param("id", recipient.id())
            .param("rigId", recipient.rigId())
            .param("channel", recipient.channel().label())
            .param("address", recipient.address())
            .param("secret", secret)
            .param("createdAt", Utc.of(recipient.createdAt()))
            .update()
        == 1;
  }

  /** Whether the rig has that recipient. */
  boolean change(long rigId, UUID id, Wishes wishes, boolean paused) {
    return wishes(jdbc.sql(CHANGE), wishes)
            .param("rigId", rigId)
            .param("id", id)
            .param("paused", paused)
            .update()
        == 1;
  }

  /** Whether the rig had that recipient. */
  boolean delete(long rigId, UUID id) {
    return jdbc.sql(DELETE).param("rigId", rigId).param("id", id).update() == 1;
  }

  List<Recipient> ofRig(long rigId) {
    return jdbc.sql(OF_RIG).param("rigId", rigId).query(RecipientRepository::recipient).list();
  }

  /** Those of all rigs that are not paused. */
  List<Recipient> awake() {
    return jdbc.sql(ALL).query(RecipientRepository::recipient).list();
  }

  Optional<Recipient> find(UUID id) {
    return jdbc.sql(BY_ID).param("id", id).query(RecipientRepository::recipient).optional();
  }

  /** With which notices to a webhook are signed; empty for mail. */
  String secret(UUID id) {
    return jdbc.sql(SECRET).param("id", id).query(String.class).optional().orElse("");
  }

  private static JdbcClient.StatementSpec wishes(JdbcClient.StatementSpec sql, Wishes wishes) {
    QuietTime quiet = wishes.quiet();
    return sql.param(
            "notices", wishes.notices().stream().map(NoticeKind::label).toArray(String[]::new))
        .param("quietFrom", quiet == null ? null : quiet.from(), java.sql.Types.TIME)
        .param("quietTo", quiet == null ? null : quiet.to(), java.sql.Types.TIME)
        .param("reminderMinutes", wishes.reminder().minutesBefore())
        .param(
            "reminderPlaces",
            wishes.reminder().places().stream().map(Place::label).toArray(String[]::new))
        .param("silentPasses", wishes.silentPasses());
  }

  private static Recipient recipient(ResultSet row, int number) throws SQLException {
    return new Recipient(
        row.getObject("id", UUID.class),
        row.getLong("rig_id"),
        Channel.ofLabel(row.getString("channel")),
        row.getString("address"),
        new Wishes(
            labels(row, "notices").map(NoticeKind::ofLabel).toList(),
            quiet(row),
            new Reminder(
                row.getInt("reminder_minutes"),
                labels(row, "reminder_places").map(Place::ofLabel).toList()),
            row.getInt("silent_passes")),
        row.getBoolean("paused"),
        row.getObject("created_at", OffsetDateTime.class).toInstant());
  }

  private static Stream<String> labels(ResultSet row, String column) throws SQLException {
    return Arrays.stream((String[]) row.getArray(column).getArray());
  }

  private static @Nullable QuietTime quiet(ResultSet row) throws SQLException {
    LocalTime from = row.getObject("quiet_from", LocalTime.class);
    return from == null ? null : new QuietTime(from, row.getObject("quiet_to", LocalTime.class));
  }
}

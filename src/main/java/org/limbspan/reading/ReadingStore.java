package org.limbspan.reading;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.limbspan.scale.LengthUnit;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.jdbc.core.ConnectionCallback;
import org.springframework.jdbc.core.JdbcOperations;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The readings in the database: rows are only ever added. */
@Repository
class ReadingStore {

  /** As many rows as one statement carries. */
  static final int ROWS_AT_ONCE = 5000;

  private static final String VERSIONS =
      """
      select r.* from reading r
      join unnest(cast(:takenAt as timestamptz[]), cast(:axis as text[])) as k(taken_at, axis)
        on r.taken_at = k.taken_at and r.axis = k.axis
      where r.rig_id = :rigId and r.taken_at between :earliest and :latest
      order by r.taken_at, r.axis, r.version
      """;

  private static final String WITHDRAW =
      """
      insert into reading (rig_id, taken_at, axis, version, standing, diameter, uncertainty, unit,
        frames, sighted_altitude_deg, sighted_azimuth_deg, exposure_s, iso, f_number, sky, note,
        reason, entered_at)
      select rig_id, taken_at, axis, version + 1, 'withdrawn', diameter, uncertainty, unit,
        frames, sighted_altitude_deg, sighted_azimuth_deg, exposure_s, iso, f_number, sky, note,
        :reason, :enteredAt
      from reading
      where rig_id = :rigId and taken_at = :takenAt and axis = :axis and version = :version
      on conflict do nothing
      """;

  /**
   * In the order of the key, so that a page of a long history reads no more than its own rows: what
   * has a later version is known from the row that follows.
   */
  private static final String STANDING =
      """
      select * from (
        select *, lead(version) over (partition by taken_at, axis order by version) as later
        from reading
        where rig_id = :rigId and taken_at >= :from and taken_at < :to
          and (taken_at, axis) > (:afterAt, :afterAxis)) latest
      where later is null and standing = 'held'
      order by taken_at, axis
      """;

  private static final String PAGE = STANDING + "limit :limit";

  private static final String EXTENT =
      """
      select count(*) as count, min(taken_at) as first_at, max(taken_at) as last_at
      from (%s) standing
      """
          .formatted(STANDING);

  /** From the end backwards, no further than the first that stands. */
  private static final String LATEST =
      """
      select taken_at from (
        select distinct on (taken_at, axis) taken_at, axis, standing from reading
        where rig_id = :rigId
        order by taken_at desc, axis desc, version desc) latest
      where standing = 'held'
      order by taken_at desc, axis desc
      limit 1
      """;

  private static final String LENGTH_UNIT =
      "select unit from (" + STANDING + ") standing where unit <> 'arcmin' limit 1";

  private static final String UNIT_IN_USE =
      "select exists (select from (" + STANDING + ") standing where unit = :unit)";

  private static final String BY_ID =
      """
      select * from reading where rig_id = :rigId and id = :id
      """;

  private static final String ROWS =
      """
      select count(*) as count, coalesce(max(id), 0) as last_id from reading where rig_id = :rigId
      """;

  private static final String COUNT_UP_TO =
      """
      select count(*) from reading where rig_id = :rigId and id <= :lastId
      """;

  private static final String AFTER =
      """
      select * from reading where rig_id = :rigId and id > :lastId order by id
      """;

  private final JdbcClient jdbc;
  private final JdbcOperations connections;

  ReadingStore(JdbcClient jdbc, JdbcOperations connections) {
    this.jdbc = jdbc;
    this.connections = connections;
  }

  /** All versions held under the keys. */
  Map<ReadingKey, Versions> versions(long rigId, Collection<ReadingKey> keys) {
    Map<ReadingKey, Versions> found = new HashMap<>();
    for (List<ReadingKey> some : Chunks.of(List.copyOf(keys), ROWS_AT_ONCE)) {
      ReadingColumns.bindKeys(jdbc.sql(VERSIONS), some)
          .param("rigId", rigId)
          .query(ReadingRow::version)
          .stream()
          .forEach(
              version -> found.computeIfAbsent(key(version), k -> new Versions()).add(version));
    }
    return found;
  }

  /** Adds rows; the caller holds the rig's lock, so each must be new. */
  void insert(long rigId, List<NumberedReading> readings, Instant enteredAt) {
    ReadingCopy copy = new ReadingCopy(rigId, enteredAt);
    for (List<NumberedReading> some : Chunks.of(readings, ROWS_AT_ONCE)) {
      Long added = connections.execute((ConnectionCallback<Long>) each -> copy.insert(each, some));
      requireAdded(some.size(), added == null ? 0 : added);
    }
  }

  /** Adds a row that takes a reading back. */
  void withdraw(long rigId, RecordedReading reading, String reason, Instant enteredAt) {
    int added =
        jdbc.sql(WITHDRAW)
            .param("rigId", rigId)
            .param("takenAt", reading.takenAt().atOffset(ZoneOffset.UTC))
            .param("axis", reading.axis().label())
            .param("version", reading.version())
            .param("reason", reason)
            .param("enteredAt", enteredAt.atOffset(ZoneOffset.UTC))
            .update();
    requireAdded(1, added);
  }

  Optional<Version> byId(long rigId, long id) {
    return jdbc.sql(BY_ID)
        .param("rigId", rigId)
        .param("id", id)
        .query(ReadingRow::version)
        .optional();
  }

  /** What stands, oldest first, at most {@code limit} of it. */
  List<RecordedReading> page(long rigId, ReadingSpan span, int limit) {
    return span.bind(jdbc.sql(PAGE), rigId).param("limit", limit).query(ReadingRow::reading).list();
  }

  /** What stands, oldest first, row by row; within a transaction, and closed by the caller. */
  Stream<RecordedReading> stream(long rigId, ReadingSpan span) {
    return span
        .bind(jdbc.sql(STANDING).withFetchSize(1000), rigId)
        .query(ReadingRow::reading)
        .stream();
  }

  /** How many rows there are, whether they stand or not. */
  RowCount rows(long rigId) {
    return jdbc.sql(ROWS)
        .param("rigId", rigId)
        .query((row, number) -> new RowCount(row.getLong("count"), row.getLong("last_id")))
        .single();
  }

  /** How many rows there are up to an id. */
  long countUpTo(long rigId, long lastId) {
    return jdbc.sql(COUNT_UP_TO)
        .param("rigId", rigId)
        .param("lastId", lastId)
        .query(Long.class)
        .single();
  }

  /** The rows that were added after an id, in that order. */
  List<Version> after(long rigId, long lastId) {
    return jdbc.sql(AFTER)
        .param("rigId", rigId)
        .param("lastId", lastId)
        .query(ReadingRow::version)
        .list();
  }

  /** How many stand, and from when to when. */
  Extent extent(long rigId) {
    return ReadingSpan.ALL
        .bind(jdbc.sql(EXTENT), rigId)
        .query(
            (row, number) ->
                new Extent(row.getLong("count"), instant(row, "first_at"), instant(row, "last_at")))
        .single();
  }

  private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
    OffsetDateTime value = row.getObject(column, OffsetDateTime.class);
    return value == null ? null : value.toInstant();
  }

  /** When the latest that stands was taken. */
  Optional<Instant> latestTakenAt(long rigId) {
    return jdbc.sql(LATEST)
        .param("rigId", rigId)
        .query((row, number) -> row.getObject(1, OffsetDateTime.class))
        .optional()
        .map(OffsetDateTime::toInstant);
  }

  /** The unit of any one length that stands in the span; it holds no other by invariant. */
  Optional<LengthUnit> lengthUnit(long rigId, ReadingSpan span) {
    return span.bind(jdbc.sql(LENGTH_UNIT), rigId)
        .query(String.class)
        .optional()
        .map(LengthUnit::ofSymbol);
  }

  boolean isInUse(long rigId, ReadingSpan span, LengthUnit unit) {
    return span.bind(jdbc.sql(UNIT_IN_USE), rigId)
        .param("unit", unit.symbol())
        .query(Boolean.class)
        .single();
  }

  private static ReadingKey key(Version version) {
    return new ReadingKey(version.reading().takenAt(), version.reading().axis());
  }

  private static void requireAdded(long expected, long added) {
    if (added != expected) {
      throw new ConcurrencyFailureException(
          "expected to add " + expected + " readings, added " + added);
    }
  }
}

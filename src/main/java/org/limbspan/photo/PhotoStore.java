package org.limbspan.photo;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.limbspan.photo.file.PhotoFormat;
import org.limbspan.photo.file.Shot;
import org.limbspan.sky.Axis;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.databind.json.JsonMapper;

/** Photographs and their measurements in the database: rows are only ever added. */
@Repository
class PhotoStore {

  private static final String INSERT =
      """
      insert into photo (rig_id, sha256, version, file_name, format, byte_count, width_px, height_px,
        taken_at, clock, axis, focal_length_mm, exposure_s, iso, f_number, camera, entered_at)
      values (:rigId, :sha256, :version, :fileName, :format, :byteCount, :widthPx, :heightPx,
        :takenAt, :clock, :axis, :focalLengthMm, :exposureS, :iso, :fNumber, :camera, :enteredAt)
      returning id
      """;

  private static final String INSERT_MEASUREMENT =
      """
      insert into photo_measurement (photo_id, method, outcome, reason, horizontal_px,
        horizontal_own_px, horizontal_shared_px, vertical_px, vertical_own_px, vertical_shared_px,
        document, measured_at)
      values (:photoId, :method, :outcome, :reason, :horizontalPx, :horizontalOwnPx,
        :horizontalSharedPx, :verticalPx, :verticalOwnPx, :verticalSharedPx,
        cast(:document as jsonb), :measuredAt)
      on conflict do nothing
      """;

  private static final String WITHDRAW =
      """
      insert into photo_withdrawal (photo_id, reason, withdrawn_at)
      values (:photoId, :reason, :withdrawnAt)
      on conflict do nothing
      """;

  private static final String STANDING =
      """
      select p.* from photo p
      where p.rig_id = :rigId
        and not exists (select from photo_withdrawal w where w.photo_id = p.id)
      """;

  private static final String PAGE =
      STANDING
          + """
            and p.id < :before
          order by p.id desc
          limit :limit
          """;

  private static final String WITH_FOCAL_LENGTH = STANDING + "and p.focal_length_mm is not null";

  private static final String BEHIND =
      STANDING
          + """
            and not exists (select from photo_measurement m
              where m.photo_id = p.id and m.method >= :method)
          order by p.id
          """;

  private static final String VERSIONS =
      """
      select p.*, w.photo_id is not null as withdrawn
      from photo p left join photo_withdrawal w on w.photo_id = p.id
      where p.rig_id = :rigId and p.sha256 = :sha256
      order by p.version desc
      limit 1
      """;

  private static final String BY_IDS =
      """
      select p.* from photo p
      where p.rig_id = :rigId and p.id in (:ids)
      order by p.taken_at, p.file_name, p.id
      """;

  private static final String MEASUREMENTS =
      """
      select * from photo_measurement where photo_id = :photoId order by method desc
      """;

  private static final String ORIGINALS =
      """
      select distinct sha256, format, byte_count from photo where rig_id = :rigId
      order by sha256, format
      """;

  private static final String SPEAKS_OF =
      """
      select exists (select from photo where rig_id = :rigId and sha256 = :sha256
        and format = :format and byte_count = :byteCount)
      """;

  private static final int ROWS_AT_ONCE = 100;

  private static final String RIGS = "select distinct rig_id from photo order by rig_id";

  private final JdbcClient jdbc;
  private final JsonMapper json;

  PhotoStore(JdbcClient jdbc, JsonMapper json) {
    this.jdbc = jdbc;
    this.json = json;
  }

  /**
   * The newest version of a file.
   *
   * @param withdrawn whether it was taken back
   */
  record Held(Photograph photo, boolean withdrawn) {}

  Optional<Held> newest(long rigId, String sha256) {
    return jdbc.sql(VERSIONS)
        .param("rigId", rigId)
        .param("sha256", sha256)
        .query((row, number) -> new Held(photo(row, number), row.getBoolean("withdrawn")))
        .optional();
  }

  long insert(long rigId, NewPhoto photo, int version, Instant enteredAt) {
    Shot shot = photo.header().shot();
    return jdbc.sql(INSERT)
        .param("rigId", rigId)
        .param("sha256", photo.sha256())
        .param("version", version)
        .param("fileName", photo.fileName())
        .param("format", photo.header().format().name().toLowerCase(Locale.ROOT))
        .param("byteCount", photo.byteCount())
        .param("widthPx", photo.header().width())
        .param("heightPx", photo.header().height())
        .param("takenAt", utc(photo.instant().at()))
        .param("clock", photo.instant().clock().label())
        .param("axis", photo.axis().label())
        .param("focalLengthMm", shot.focalLengthMm())
        .param("exposureS", shot.exposureS())
        .param("iso", shot.iso())
        .param("fNumber", shot.fNumber())
        .param("camera", shot.camera())
        .param("enteredAt", utc(enteredAt))
        .query(Long.class)
        .single();
  }

  /** Adds what a method made of a photograph; once is enough. */
  void insert(long photoId, MeasuredByMethod measured) {
    DiscFigures figures = measured.figures();
    DiscFigures.@Nullable Along horizontal = figures == null ? null : figures.horizontal();
    DiscFigures.@Nullable Along vertical = figures == null ? null : figures.vertical();
    jdbc.sql(INSERT_MEASUREMENT)
        .param("photoId", photoId)
        .param("method", measured.method())
        .param("outcome", figures == null ? "refused" : "measured")
        .param("reason", measured.refusedBecause())
        .param("horizontalPx", horizontal == null ? null : horizontal.diameterPx())
        .param("horizontalOwnPx", horizontal == null ? null : horizontal.ownPx())
        .param("horizontalSharedPx", horizontal == null ? null : horizontal.sharedPx())
        .param("verticalPx", vertical == null ? null : vertical.diameterPx())
        .param("verticalOwnPx", vertical == null ? null : vertical.ownPx())
        .param("verticalSharedPx", vertical == null ? null : vertical.sharedPx())
        .param("document", figures == null ? null : json.writeValueAsString(figures))
        .param("measuredAt", utc(measured.measuredAt()))
        .update();
  }

  void withdraw(long photoId, String reason, Instant at) {
    jdbc.sql(WITHDRAW)
        .param("photoId", photoId)
        .param("reason", reason)
        .param("withdrawnAt", utc(at))
        .update();
  }

  /** Photographs that stand, the last entered first. */
  List<Photograph> page(long rigId, long before, int limit) {
    return jdbc.sql(PAGE)
        .param("rigId", rigId)
        .param("before", before)
        .param("limit", limit)
        .query(PhotoStore::photo)
        .list();
  }

  List<FocalLengths.Told> focalLengths(long rigId) {
    return jdbc
        .sql(WITH_FOCAL_LENGTH)
        .param("rigId", rigId)
        .query(PhotoStore::photo)
        .list()
        .stream()
        .map(
            photo ->
                new FocalLengths.Told(
                    photo.takenAt(), Objects.requireNonNull(photo.focalLengthMm())))
        .toList();
  }

  /** Photographs that stand and were not measured by that method or a newer one. */
  List<Photograph> behind(long rigId, int method) {
    return jdbc.sql(BEHIND)
        .param("rigId", rigId)
        .param("method", method)
        .query(PhotoStore::photo)
        .list();
  }

  /** By time, withdrawn ones too. */
  List<Photograph> byIds(long rigId, Collection<Long> ids) {
    return ids.isEmpty()
        ? List.of()
        : jdbc.sql(BY_IDS).param("rigId", rigId).param("ids", ids).query(PhotoStore::photo).list();
  }

  /** The newest first. */
  List<MeasuredByMethod> measurements(long photoId) {
    return jdbc.sql(MEASUREMENTS).param("photoId", photoId).query(this::measured).list();
  }

  List<Long> rigsWithPhotos() {
    return jdbc.sql(RIGS).query(Long.class).list();
  }

  /** A file that photographs came in. */
  record Original(String sha256, PhotoFormat format, long byteCount) {}

  /** The files of a rig by their hashes, to be closed; a few rows at once within a transaction. */
  Stream<Original> originals(long rigId) {
    return jdbc
        .sql(ORIGINALS)
        .withFetchSize(ROWS_AT_ONCE)
        .param("rigId", rigId)
        .query(
            (row, number) ->
                new Original(row.getString("sha256"), format(row), row.getLong("byte_count")))
        .stream();
  }

  /** Whether a photograph of the rig came in that file. */
  boolean speaksOf(long rigId, String sha256, PhotoFormat format, long byteCount) {
    return jdbc.sql(SPEAKS_OF)
        .param("rigId", rigId)
        .param("sha256", sha256)
        .param("format", format.name().toLowerCase(Locale.ROOT))
        .param("byteCount", byteCount)
        .query(Boolean.class)
        .single();
  }

  private MeasuredByMethod measured(ResultSet row, int number) throws SQLException {
    String document = row.getString("document");
    return new MeasuredByMethod(
        row.getInt("method"),
        instant(row, "measured_at"),
        document == null ? null : json.readValue(document, DiscFigures.class),
        row.getString("reason"));
  }

  private static Photograph photo(ResultSet row, int number) throws SQLException {
    return new Photograph(
        row.getLong("id"),
        row.getString("sha256"),
        row.getInt("version"),
        row.getString("file_name"),
        format(row),
        row.getInt("width_px"),
        row.getInt("height_px"),
        instant(row, "taken_at"),
        row.getString("clock"),
        Axis.ofLabel(row.getString("axis")),
        row.getObject("focal_length_mm", Double.class),
        row.getObject("exposure_s", Double.class),
        row.getObject("iso", Integer.class),
        row.getObject("f_number", Double.class),
        row.getString("camera"),
        instant(row, "entered_at"));
  }

  private static PhotoFormat format(ResultSet row) throws SQLException {
    return PhotoFormat.valueOf(row.getString("format").toUpperCase(Locale.ROOT));
  }

  static Instant instant(ResultSet row, String column) throws SQLException {
    return Objects.requireNonNull(row.getObject(column, OffsetDateTime.class)).toInstant();
  }

  static OffsetDateTime utc(Instant instant) {
    return instant.atOffset(ZoneOffset.UTC);
  }
}

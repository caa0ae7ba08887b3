package org.limbspan.photo;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.limbspan.sky.Axis;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.SqlArrayValue;
import org.springframework.stereotype.Repository;

/** Which readings photographs make, planned and entered. */
@Repository
class PhotoReadingStore {

  private static final String PLANNED =
      """
      select * from photo_reading where rig_id = :rigId and retired_at is null
      order by taken_at, axis
      """;

  private static final String OF_READING =
      """
      select * from photo_reading where rig_id = :rigId and reading_id = :readingId
      order by id desc limit 1
      """;

  private static final String WAS_ENTERED =
      """
      select exists (select from photo_reading
        where rig_id = :rigId and taken_at = :takenAt and axis = :axis and reading_id is not null)
      """;

  private static final String INSERT =
      """
      insert into photo_reading (rig_id, taken_at, axis, diameter_px, uncertainty_px, photo_ids,
        set_aside_ids, remarks, planned_at)
      values (:rigId, :takenAt, :axis, :diameterPx, :uncertaintyPx, :photoIds, :setAsideIds,
        :remarks, :plannedAt)
      """;

  private static final String RETIRE =
      """
      update photo_reading set retired_at = :at where id = :id
      """;

  private static final String ENTERED =
      """
      update photo_reading set reading_id = :readingId where id = :id
      """;

  private final JdbcClient jdbc;

  PhotoReadingStore(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  /** What stands or is to stand. */
  List<PhotoReading> planned(long rigId) {
    return jdbc.sql(PLANNED).param("rigId", rigId).query(PhotoReadingStore::reading).list();
  }

  Optional<PhotoReading> ofReading(long rigId, long readingId) {
    return jdbc.sql(OF_READING)
        .param("rigId", rigId)
        .param("readingId", readingId)
        .query(PhotoReadingStore::reading)
        .optional();
  }

  /** Whether photographs ever entered a reading for that instant and axis. */
  boolean everEntered(long rigId, Instant takenAt, Axis axis) {
    return jdbc.sql(WAS_ENTERED)
        .param("rigId", rigId)
        .param("takenAt", PhotoStore.utc(takenAt))
        .param("axis", axis.label())
        .query(Boolean.class)
        .single();
  }

  void insert(long rigId, PlannedReading planned, Instant at) {
    jdbc.sql(INSERT)
        .param("rigId", rigId)
        .param("takenAt", PhotoStore.utc(planned.takenAt()))
        .param("axis", planned.axis().label())
        .param("diameterPx", planned.combined().diameterPx())
        .param("uncertaintyPx", planned.combined().uncertaintyPx())
        .param("photoIds", new SqlArrayValue("int8", planned.photoIds().toArray()))
        .param("setAsideIds", new SqlArrayValue("int8", planned.setAsideIds().toArray()))
        .param(
            "remarks",
            new SqlArrayValue("text", BracketWords.remarks(planned.combined()).toArray()))
        .param("plannedAt", PhotoStore.utc(at))
        .update();
  }

  void retire(long id, Instant at) {
    jdbc.sql(RETIRE).param("id", id).param("at", PhotoStore.utc(at)).update();
  }

  void markEntered(long id, long readingId) {
    jdbc.sql(ENTERED).param("id", id).param("readingId", readingId).update();
  }

  private static PhotoReading reading(ResultSet row, int number) throws SQLException {
    return new PhotoReading(
        row.getLong("id"),
        PhotoStore.instant(row, "taken_at"),
        Axis.ofLabel(row.getString("axis")),
        row.getDouble("diameter_px"),
        row.getDouble("uncertainty_px"),
        List.of((Long[]) row.getArray("photo_ids").getArray()),
        List.of((Long[]) row.getArray("set_aside_ids").getArray()),
        List.of((String[]) row.getArray("remarks").getArray()),
        row.getObject("reading_id", Long.class));
  }
}

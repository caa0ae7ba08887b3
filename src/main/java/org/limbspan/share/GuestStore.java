package org.limbspan.share;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.limbspan.sky.Axis;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The tables of the guests. */
@Repository
class GuestStore {

  private static final String ADD =
      """
      insert into guest_rig (slug, name, latitude_deg, longitude_deg, elevation_m, position_deg,
        licence, sha256, loaded_at)
      values (:slug, :name, :latitude, :longitude, :elevation, :position, :licence, :sha256, :at)
      on conflict (sha256) do nothing
      returning id
      """;

  private static final String HELD = "select id from guest_rig where sha256 = :sha256";

  private static final String ADD_READING =
      """
      insert into guest_reading (guest_id, taken_at, axis, diameter_arcmin, uncertainty_arcmin,
        altitude_deg, setup)
      values (?, ?, ?, ?, ?, ?, ?)
      """;

  private static final String ALL =
      """
      select g.*, (select count(*) from guest_reading r where r.guest_id = g.id) as reading_count
      from guest_rig g order by g.slug, g.id
      """;

  private static final String READINGS =
      """
      select taken_at, axis, diameter_arcmin, uncertainty_arcmin, altitude_deg, setup
      from guest_reading where guest_id = :id order by taken_at, axis
      """;

  private static final String REMOVE = "delete from guest_rig where id = :id";

  private static final int BATCH = 1000;

  private final JdbcClient client;
  private final JdbcTemplate jdbc;

  GuestStore(JdbcClient client, JdbcTemplate jdbc) {
    this.client = client;
    this.jdbc = jdbc;
  }

  /** Empty if the very same package is held. */
  Optional<Long> add(GuestPackage loaded, Instant now) {
    SharedRig rig = loaded.rig();
    Optional<Long> id =
        client
            .sql(ADD)
            .param("slug", rig.slug())
            .param("name", rig.name())
            .param("latitude", rig.latitudeDeg())
            .param("longitude", rig.longitudeDeg())
            .param("elevation", rig.elevationM())
            .param("position", rig.positionDeg())
            .param("licence", loaded.licence())
            .param("sha256", HexFormat.of().parseHex(loaded.sha256()))
            .param("at", OffsetDateTime.ofInstant(now, ZoneOffset.UTC))
            .query(Long.class)
            .optional();
    id.ifPresent(guest -> addReadings(guest, loaded.readings()));
    return id;
  }

  private void addReadings(long guest, List<SharedReading> readings) {
    jdbc.batchUpdate(
        ADD_READING,
        readings,
        BATCH,
        (statement, reading) -> {
          statement.setLong(1, guest);
          statement.setObject(2, OffsetDateTime.ofInstant(reading.takenAt(), ZoneOffset.UTC));
          statement.setString(3, reading.axis().label());
          statement.setDouble(4, reading.diameterArcmin());
          statement.setDouble(5, reading.uncertaintyArcmin());
          statement.setObject(6, reading.altitudeDeg(), Types.DOUBLE);
          statement.setInt(7, reading.setup());
        });
  }

  long held(String sha256) {
    return client
        .sql(HELD)
        .param("sha256", HexFormat.of().parseHex(sha256))
        .query(Long.class)
        .single();
  }

  List<Guest> all() {
    return client.sql(ALL).query(GuestStore::guest).list();
  }

  List<SharedReading> readings(long id) {
    return client.sql(READINGS).param("id", id).query(GuestStore::reading).list();
  }

  boolean remove(long id) {
    return client.sql(REMOVE).param("id", id).update() == 1;
  }

  private static Guest guest(ResultSet row, int number) throws SQLException {
    return new Guest(
        row.getLong("id"),
        row.getString("slug"),
        row.getString("name"),
        row.getDouble("latitude_deg"),
        row.getDouble("longitude_deg"),
        row.getDouble("elevation_m"),
        row.getDouble("position_deg"),
        row.getString("licence"),
        row.getInt("reading_count"),
        row.getObject("loaded_at", OffsetDateTime.class).toInstant());
  }

  private static SharedReading reading(ResultSet row, int number) throws SQLException {
    return new SharedReading(
        row.getObject("taken_at", OffsetDateTime.class).toInstant(),
        Axis.ofLabel(row.getString("axis")),
        row.getDouble("diameter_arcmin"),
        row.getDouble("uncertainty_arcmin"),
        row.getObject("altitude_deg", Double.class),
        row.getInt("setup"));
  }
}

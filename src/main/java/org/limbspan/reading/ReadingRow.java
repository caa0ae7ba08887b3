package org.limbspan.reading;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Objects;
import org.limbspan.sky.Axis;

/** Reads rows of the table of readings. */
final class ReadingRow {

  private ReadingRow() {}

  static Version version(ResultSet row, int number) throws SQLException {
    return new Version(reading(row, number), Version.Standing.ofLabel(row.getString("standing")));
  }

  static RecordedReading reading(ResultSet row, int number) throws SQLException {
    return new RecordedReading(
        row.getLong("id"),
        instant(row, "taken_at"),
        Axis.ofLabel(row.getString("axis")),
        row.getInt("version"),
        new Diameter(
            row.getDouble("diameter"),
            row.getDouble("uncertainty"),
            DiameterUnit.ofSymbol(row.getString("unit"))),
        frames(row),
        circumstances(row),
        instant(row, "entered_at"));
  }

  private static Circumstances circumstances(ResultSet row) throws SQLException {
    return new Circumstances(
        row.getObject("sighted_altitude_deg", Double.class),
        row.getObject("sighted_azimuth_deg", Double.class),
        row.getObject("exposure_s", Double.class),
        row.getObject("iso", Integer.class),
        row.getObject("f_number", Double.class),
        row.getString("sky"),
        row.getString("note"));
  }

  private static List<Double> frames(ResultSet row) throws SQLException {
    Array frames = row.getArray("frames");
    return frames == null ? List.of() : List.of((Double[]) frames.getArray());
  }

  private static Instant instant(ResultSet row, String column) throws SQLException {
    return Objects.requireNonNull(row.getObject(column, OffsetDateTime.class)).toInstant();
  }
}

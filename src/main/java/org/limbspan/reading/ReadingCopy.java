package org.limbspan.reading;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.StringJoiner;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.postgresql.PGConnection;

/**
 * Readings as rows of PostgreSQL's COPY in its text format, the quickest way in: values parted by
 * tabs, {@code \N} for what is not known.
 */
final class ReadingCopy {

  private static final String COPY =
      """
      copy reading (rig_id, taken_at, axis, version, standing, diameter, uncertainty, unit, frames,
        sighted_altitude_deg, sighted_azimuth_deg, exposure_s, iso, f_number, sky, note, entered_at)
      from stdin
      """;

  private static final int BUFFER_BYTES = 65_536;
  private static final int ROW_CHARACTERS = 160;

  private final String rigId;
  private final String enteredAt;

  ReadingCopy(long rigId, Instant enteredAt) {
    this.rigId = Long.toString(rigId);
    this.enteredAt = enteredAt.toString();
  }

  /** Adds the rows; how many there were. */
  long insert(Connection connection, List<NumberedReading> readings) throws SQLException {
    StringBuilder rows = new StringBuilder(ROW_CHARACTERS * readings.size());
    readings.forEach(reading -> rows.append(row(reading)).append('\n'));
    try {
      return connection
          .unwrap(PGConnection.class)
          .getCopyAPI()
          .copyIn(COPY, new StringReader(rows.toString()), BUFFER_BYTES);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private StringJoiner row(NumberedReading numbered) {
    NewReading reading = numbered.reading();
    Diameter diameter = reading.diameter();
    Circumstances circumstances = reading.circumstances();
    return new StringJoiner("\t")
        .add(rigId)
        .add(reading.takenAt().toString())
        .add(reading.axis().label())
        .add(Integer.toString(numbered.version()))
        .add("held")
        .add(Double.toString(diameter.value()))
        .add(Double.toString(diameter.uncertainty()))
        .add(diameter.unit().symbol())
        .add(value(frames(reading.frames())))
        .add(value(circumstances.altitudeDeg()))
        .add(value(circumstances.azimuthDeg()))
        .add(value(circumstances.exposureS()))
        .add(value(circumstances.iso()))
        .add(value(circumstances.fNumber()))
        .add(value(circumstances.sky()))
        .add(value(circumstances.note()))
        .add(enteredAt);
  }

  /** The frames as the database writes an array; null for none. */
  private static @Nullable String frames(List<Double> frames) {
    return frames.isEmpty()
        ? null
        : frames.stream().map(String::valueOf).collect(Collectors.joining(",", "{", "}"));
  }

  private static String value(@Nullable Object value) {
    return value == null
        ? "\\N"
        : value
            .toString()
            .replace("\\", "\\\\")
            .replace("\t", "\\t")
            .replace("\n", "\\n")
            .replace("\r", "\\r");
  }
}

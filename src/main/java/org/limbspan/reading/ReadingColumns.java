package org.limbspan.reading;

import java.sql.Types;
import java.time.Instant;
import java.util.List;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;

/** Readings turned on their side: one array for each column. */
final class ReadingColumns {

  private final String[] takenAt;
  private final String[] axis;
  private final Instant earliest;
  private final Instant latest;

  private ReadingColumns(String[] takenAt, String[] axis, Instant earliest, Instant latest) {
    this.takenAt = takenAt;
    this.axis = axis;
    this.earliest = earliest;
    this.latest = latest;
  }

  /** The columns of one or more keys. */
  static ReadingColumns ofKeys(List<ReadingKey> keys) {
    return new ReadingColumns(
        keys.stream().map(key -> key.takenAt().toString()).toArray(String[]::new),
        keys.stream().map(key -> key.axis().label()).toArray(String[]::new),
        keys.stream().map(ReadingKey::takenAt).min(Instant::compareTo).orElseThrow(),
        keys.stream().map(ReadingKey::takenAt).max(Instant::compareTo).orElseThrow());
  }

  String[] takenAt() {
    return takenAt;
  }

  String[] axis() {
    return axis;
  }

  Instant earliest() {
    return earliest;
  }

  Instant latest() {
    return latest;
  }

  static StatementSpec bind(StatementSpec statement, List<NumberedReading> rows) {
    Binder binder = new Binder(statement, rows);
    binder.texts("takenAt", each -> each.reading().takenAt().toString());
    binder.texts("axis", each -> each.reading().axis().label());
    binder.wholes("version", NumberedReading::version);
    binder.numbers("diameter", each -> each.reading().diameter().value());
    binder.numbers("uncertainty", each -> each.reading().diameter().uncertainty());
    binder.texts("unit", each -> each.reading().diameter().unit().symbol());
    binder.texts("frames", each -> frames(each.reading().frames()));
    binder.numbers("altitudeDeg", each -> each.reading().circumstances().altitudeDeg());
    binder.numbers("azimuthDeg", each -> each.reading().circumstances().azimuthDeg());
    binder.numbers("exposureS", each -> each.reading().circumstances().exposureS());
    binder.wholes("iso", each -> each.reading().circumstances().iso());
    binder.numbers("fNumber", each -> each.reading().circumstances().fNumber());
    binder.texts("sky", each -> each.reading().circumstances().sky());
    binder.texts("note", each -> each.reading().circumstances().note());
    return statement;
  }

  /** The frames as the database writes an array; null for none. */
  private static @Nullable String frames(List<Double> frames) {
    return frames.isEmpty()
        ? null
        : frames.stream().map(String::valueOf).collect(Collectors.joining(",", "{", "}"));
  }

  private record Binder(StatementSpec statement, List<NumberedReading> rows) {

    void texts(String name, Function<NumberedReading, @Nullable String> column) {
      bind(name, column, String[]::new);
    }

    void numbers(String name, Function<NumberedReading, @Nullable Double> column) {
      bind(name, column, Double[]::new);
    }

    void wholes(String name, Function<NumberedReading, @Nullable Integer> column) {
      bind(name, column, Integer[]::new);
    }

    private <T> void bind(
        String name,
        Function<NumberedReading, @Nullable T> column,
        IntFunction<@Nullable T[]> array) {
      statement.param(name, rows.stream().map(column).toArray(array), Types.ARRAY);
    }
  }
}

package org.limbspan.reading;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.jdbc.support.SqlArrayValue;

/** Readings turned on their side: one array for each column. */
final class ReadingColumns {

  private ReadingColumns() {}

  /** Binds the columns of one or more keys and the span that they lie in. */
  static StatementSpec bindKeys(StatementSpec statement, List<ReadingKey> keys) {
    List<Instant> instants = keys.stream().map(ReadingKey::takenAt).sorted().toList();
    return statement
        .param(
            "takenAt",
            new SqlArrayValue("text", keys.stream().map(key -> key.takenAt().toString()).toArray()))
        .param(
            "axis",
            new SqlArrayValue("text", keys.stream().map(key -> key.axis().label()).toArray()))
        .param("earliest", instants.get(0).atOffset(ZoneOffset.UTC))
        .param("latest", instants.get(instants.size() - 1).atOffset(ZoneOffset.UTC));
  }

  /** Binds the columns of rows to be added. */
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
      bind(name, "text", rows.stream().map(column).toArray());
    }

    void numbers(String name, Function<NumberedReading, @Nullable Double> column) {
      bind(name, "float8", rows.stream().map(column).toArray());
    }

    void wholes(String name, Function<NumberedReading, @Nullable Integer> column) {
      bind(name, "int4", rows.stream().map(column).toArray());
    }

    private void bind(String name, String type, Object[] column) {
      statement.param(name, new SqlArrayValue(type, column));
    }
  }
}

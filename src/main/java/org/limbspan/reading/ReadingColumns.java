package org.limbspan.reading;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.jdbc.support.SqlArrayValue;

/** Keys of readings turned on their side: one array for each column. */
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
}

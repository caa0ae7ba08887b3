package org.limbspan.reading;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** When each rig was last read. */
@Component
class LatestReadings {

  private static final String LATEST =
      """
      select r.slug, l.taken_at
      from rig r
      left join lateral (select taken_at from reading where rig_id = r.id
        order by taken_at desc limit 1) l on true
      order by r.slug
      """;

  private final JdbcClient jdbc;

  LatestReadings(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  /** By slug; empty if there is none yet. */
  Map<String, Optional<Instant>> bySlug() {
    Map<String, Optional<Instant>> latest = new LinkedHashMap<>();
    jdbc.sql(LATEST).query((ResultSet row) -> note(latest, row));
    return latest;
  }

  private static void note(Map<String, Optional<Instant>> latest, ResultSet row)
      throws SQLException {
    OffsetDateTime at = row.getObject("taken_at", OffsetDateTime.class);
    latest.put(row.getString("slug"), at == null ? Optional.empty() : Optional.of(at.toInstant()));
  }
}

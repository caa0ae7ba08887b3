package org.limbspan.reading;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** When each rig was last read. For whoever looks: no weather is a fault of the service. */
@Component("latestReading")
class LatestReadingHealth implements HealthIndicator {

  private static final String LATEST =
      """
      select r.slug, l.taken_at
      from rig r
      left join lateral (select taken_at from reading where rig_id = r.id
        order by taken_at desc limit 1) l on true
      order by r.slug
      """;

  private final JdbcClient jdbc;

  LatestReadingHealth(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  @Override
  public Health health() {
    Map<String, Object> latest = new LinkedHashMap<>();
    jdbc.sql(LATEST).query((ResultSet row) -> note(latest, row));
    return Health.up().withDetails(latest).build();
  }

  private static void note(Map<String, Object> latest, ResultSet row) throws SQLException {
    OffsetDateTime at = row.getObject("taken_at", OffsetDateTime.class);
    latest.put(row.getString("slug"), at == null ? "none yet" : at.toInstant());
  }
}

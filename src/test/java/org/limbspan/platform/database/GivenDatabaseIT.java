package org.limbspan.platform.database;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.env.Environment;
import org.springframework.jdbc.core.simple.JdbcClient;

/** With {@code spring.datasource.url}, which {@link LimbspanIT} gives. */
@LimbspanIT
class GivenDatabaseIT {

  @Autowired private ObjectProvider<EmbeddedDatabase> embedded;
  @Autowired private JdbcClient jdbc;
  @Autowired private Environment environment;

  @Test
  void usesTheGivenServerAndStartsNone() {
    assertThat(embedded).isEmpty();
    assertThat(environment.getProperty("spring.datasource.url"))
        .endsWith("/" + jdbc.sql("select current_database()").query(String.class).single());
  }
}

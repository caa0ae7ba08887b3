package org.limbspan.testing;

import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;

/** Gives each application context a fresh database. */
class TestDatabaseInitializer
    implements ApplicationContextInitializer<ConfigurableApplicationContext> {

  @Override
  public void initialize(ConfigurableApplicationContext context) {
    TestDatabase database = TestDatabase.fresh();
    TestPropertyValues.of(
            "spring.datasource.url=" + database.url(),
            "spring.datasource.username=" + database.username(),
            "spring.datasource.password=" + database.password())
        .applyTo(context);
  }
}

package org.limbspan.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.util.FileSystemUtils;

/** Gives each application context a fresh database and a home of its own. */
class TestDatabaseInitializer
    implements ApplicationContextInitializer<ConfigurableApplicationContext> {

  @Override
  public void initialize(ConfigurableApplicationContext context) {
    TestDatabase database = TestDatabase.fresh();
    TestPropertyValues.of(
            "spring.datasource.url=" + database.url(),
            "spring.datasource.username=" + database.username(),
            "spring.datasource.password=" + database.password(),
            "limbspan.home=" + freshHome())
        .applyTo(context);
  }

  private static Path freshHome() {
    try {
      Path home = Files.createTempDirectory("limbspan-test-home");
      Runtime.getRuntime().addShutdownHook(new Thread(() -> deleteQuietly(home)));
      return home;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void deleteQuietly(Path home) {
    FileSystemUtils.deleteRecursively(home.toFile());
  }
}

package org.limbspan.testing;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;
import org.testcontainers.utility.DockerImageName;

/**
 * A PostgreSQL server for tests: a container where a Docker engine answers, otherwise the embedded
 * one, without the durable settings of the service.
 *
 * <p>The system property {@code limbspan.test.database} or the environment variable {@code
 * LIMBSPAN_TEST_DATABASE} asks for one of them: {@code container} or {@code embedded}. The image of
 * the container is {@code limbspan.test.postgres-image} or {@code LIMBSPAN_TEST_POSTGRES_IMAGE}.
 */
record TestServer(String address, String username, String password) {

  private static final Logger LOG = LoggerFactory.getLogger(TestServer.class);
  private static final String DEFAULT_IMAGE = "postgres:18-alpine";
  private static final String CONNECTIONS = "200";

  private static final class Shared {
    static final TestServer SERVER = asked();
  }

  static TestServer shared() {
    return Shared.SERVER;
  }

  String url(String database) {
    return "jdbc:postgresql://" + address + "/" + database;
  }

  private static TestServer asked() {
    String database = setting("limbspan.test.database", "LIMBSPAN_TEST_DATABASE", "");
    return switch (database) {
      case "container" -> container();
      case "embedded" -> embedded();
      case "" -> DockerClientFactory.instance().isDockerAvailable() ? container() : embedded();
      default ->
          throw new IllegalArgumentException(
              "limbspan.test.database is '" + database + "', expected container or embedded");
    };
  }

  private static String setting(String property, String variable, String usual) {
    return System.getProperty(property, System.getenv().getOrDefault(variable, usual));
  }

  private static TestServer container() {
    String image =
        setting("limbspan.test.postgres-image", "LIMBSPAN_TEST_POSTGRES_IMAGE", DEFAULT_IMAGE);
    PostgreSQLContainer container =
        new PostgreSQLContainer(DockerImageName.parse(image).asCompatibleSubstituteFor("postgres"))
            .withCommand("postgres", "-c", "fsync=off", "-c", "max_connections=" + CONNECTIONS);
    container.start();
    Runtime.getRuntime().addShutdownHook(new Thread(container::stop));
    LOG.info("test database: container of {}", image);
    return new TestServer(
        container.getHost() + ":" + container.getMappedPort(PostgreSQLContainer.POSTGRESQL_PORT),
        container.getUsername(),
        container.getPassword());
  }

  private static TestServer embedded() {
    try {
      EmbeddedPostgres postgres =
          EmbeddedPostgres.builder()
              .setServerConfig("max_connections", CONNECTIONS)
              .setServerConfig("timezone", "UTC")
              .start();
      LOG.info("test database: embedded, on port {}", postgres.getPort());
      return new TestServer("127.0.0.1:" + postgres.getPort(), "postgres", "postgres");
    } catch (IOException e) {
      throw new UncheckedIOException("the embedded test database did not start", e);
    }
  }
}

package org.limbspan.testing;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * The one seam through which integration tests get a database: an empty one on a PostgreSQL server
 * that all tests of a JVM share.
 */
public record TestDatabase(String url, String username, String password) {

  private static final AtomicInteger COUNT = new AtomicInteger();

  /** An empty database that nobody else uses. */
  public static TestDatabase fresh() {
    TestServer server = TestServer.shared();
    String name = "limbspan_" + COUNT.incrementAndGet();
    try (Connection connection =
            DriverManager.getConnection(
                server.url("postgres"), server.username(), server.password());
        Statement statement = connection.createStatement()) {
      statement.execute("create database " + name);
    } catch (SQLException e) {
      throw new IllegalStateException("no test database could be made", e);
    }
    return new TestDatabase(server.url(name), server.username(), server.password());
  }
}

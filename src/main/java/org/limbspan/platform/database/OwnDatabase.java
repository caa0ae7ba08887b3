package org.limbspan.platform.database;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;

/** The service's own database and its role, which is not a superuser. */
final class OwnDatabase {

  static final String NAME = "limbspan";

  private OwnDatabase() {}

  static String url(int port, String database) {
    return "jdbc:postgresql://127.0.0.1:" + port + "/" + database + "?ApplicationName=limbspan";
  }

  /** Makes what is not there yet; a first start may have been cut short between the two. */
  static void create(int port, String password) {
    String url = url(port, "postgres");
    try (Connection connection = DriverManager.getConnection(url, Cluster.SUPERUSER, password);
        Statement statement = connection.createStatement()) {
      if (isMissing(connection, "select 1 from pg_roles where rolname = ?")) {
        statement.execute("create role " + NAME + " login password '" + password + "'");
      }
      if (isMissing(connection, "select 1 from pg_database where datname = ?")) {
        statement.execute("create database " + NAME + " owner " + NAME);
      }
    } catch (SQLException e) {
      throw new IllegalStateException("the database " + NAME + " could not be made", e);
    }
  }

  private static boolean isMissing(Connection connection, String query) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(query)) {
      statement.setString(1, NAME);
      return !statement.executeQuery().next();
    }
  }
}

package org.limbspan.platform.reads;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Properties;
import org.jspecify.annotations.Nullable;

/**
 * One kept connection for short questions, beside the pool: they must be answered also when all
 * connections of the pool are out. One thread uses it.
 */
final class Line implements AutoCloseable {

  /** For the address, for a login, and for each answer. */
  private static final String LONGEST_WAIT_S = "2";

  /** Reads the one row of an answer. */
  @FunctionalInterface
  interface Row<T> {
    T read(ResultSet row) throws SQLException;
  }

  private final String url;
  private final Properties properties = new Properties();
  private @Nullable Connection connection;

  Line(Account account) {
    this.url = account.url();
    account.fill(properties);
    properties.setProperty("connectTimeout", LONGEST_WAIT_S);
    properties.setProperty("loginTimeout", LONGEST_WAIT_S);
    properties.setProperty("socketTimeout", LONGEST_WAIT_S);
  }

  /** Asks for one row; once more over a new connection if the kept one turns out to be lost. */
  <T> T ask(String sql, Row<T> row, Object... parameters) throws SQLException {
    Connection kept = connection;
    if (kept != null && !kept.isClosed()) {
      try {
        return ask(kept, sql, row, parameters);
      } catch (SQLException failed) {
        if (!kept.isClosed()) {
          throw failed;
        }
      }
    }
    Connection fresh = DriverManager.getConnection(url, properties);
    connection = fresh;
    return ask(fresh, sql, row, parameters);
  }

  private static <T> T ask(Connection over, String sql, Row<T> row, Object... parameters)
      throws SQLException {
    try (PreparedStatement statement = over.prepareStatement(sql)) {
      for (int i = 0; i < parameters.length; i++) {
        statement.setObject(i + 1, parameters[i]);
      }
      try (ResultSet answer = statement.executeQuery()) {
        answer.next();
        return row.read(answer);
      }
    }
  }

  @Override
  public void close() throws SQLException {
    if (connection != null) {
      connection.close();
    }
  }
}

package org.limbspan.platform.database;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;

/**
 * A small service in a process of its own, to be killed: adds numbers to a table, one transaction
 * each, and prints each number after its commit.
 */
final class WritingService {

  private WritingService() {}

  public static void main(String[] arguments) throws Exception {
    EmbeddedDatabase database = EmbeddedDatabase.start(arguments[0]);
    try (Connection connection =
            DriverManager.getConnection(
                database.getJdbcUrl(), database.getUsername(), database.getPassword());
        Statement statement = connection.createStatement()) {
      statement.execute("create table if not exists written (number int primary key)");
      for (int number = 1; ; number++) {
        statement.execute("insert into written values (" + number + ")");
        System.out.println("committed " + number);
      }
    }
  }
}

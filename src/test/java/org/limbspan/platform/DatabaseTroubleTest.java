package org.limbspan.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import org.hibernate.TransactionException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** States: PostgreSQL documentation, appendix "PostgreSQL Error Codes". */
class DatabaseTroubleTest {

  @ParameterizedTest
  @CsvSource({
    "08006, UNREACHABLE", // connection_failure
    "57P01, UNREACHABLE", // admin_shutdown
    "57P03, UNREACHABLE", // cannot_connect_now
    "53100, NO_ROOM", // disk_full
    "53300, BUSY", // too_many_connections
    "40001, CONTENDED" // serialization_failure
  })
  void isToldByTheStateOfAnyCause(String state, DatabaseTrouble expected) {
    var thrown = new RuntimeException(new RuntimeException(new SQLException("said", state)));
    assertThat(DatabaseTrouble.in(thrown)).contains(expected);
  }

  @Test
  void aPoolWithoutConnectionsIsUnreachable() {
    var thrown = new RuntimeException(new SQLTransientConnectionException("timed out"));
    assertThat(DatabaseTrouble.in(thrown)).contains(DatabaseTrouble.UNREACHABLE);
  }

  @Test
  void aRollbackThatCouldNotBeSentIsUnreachable() {
    var thrown =
        new RuntimeException(
            new TransactionException("not rolled back", new SQLException("connection is closed")));
    assertThat(DatabaseTrouble.in(thrown)).contains(DatabaseTrouble.UNREACHABLE);
  }

  @Test
  void aCommitThatFoundTheDiskFullIsToldByItsState() {
    var thrown = new TransactionException("not committed", new SQLException("full", "53100"));
    assertThat(DatabaseTrouble.in(thrown)).contains(DatabaseTrouble.NO_ROOM);
  }

  @Test
  void aViolatedRuleIsNoTrouble() {
    var thrown = new RuntimeException(new SQLException("not unique", "23505"));
    assertThat(DatabaseTrouble.in(thrown)).isEmpty();
  }
}

package org.limbspan.platform.reads;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.client.RestTestClient;

/** A database that is silent: somebody has locked the table that is asked for. */
@LimbspanIT
@TestPropertySource(properties = "limbspan.reads.patience=1s")
class PatienceIT {

  private static final long LONGER_THAN_PATIENCE_MS = 3000;
  private static final Duration LONGEST = Duration.ofSeconds(60);
  private static final String READING =
      """
      {"takenAt": "2026-03-01T21:00:00Z", "axis": "horizontal", "diameterArcmin": 31.2,
       "uncertaintyArcmin": 0.05}""";

  @Autowired private RestTestClient http;
  @Autowired private DataSource source;

  @Test
  void tellsAPageThatTheDatabaseDoesNotAnswer() throws SQLException {
    RigClient rig = RigClient.described(http, "patience-page");
    try (Connection locker = source.getConnection();
        Statement lock = locker.createStatement()) {
      locker.setAutoCommit(false);
      lock.execute("lock table rig in access exclusive mode");
      http.get().uri("/rigs/patience-page").exchange().expectStatus().isEqualTo(503);
      http.get().uri("/api/rigs/patience-page").exchange().expectStatus().isEqualTo(503);
      locker.rollback();
    }
    assertThat(rig.get("").status()).isEqualTo(200);
  }

  @Test
  void letsWritesAndExportsWait() throws Exception {
    RigClient rig = RigClient.described(http, "patience-export");
    assertThat(rig.postJson("/readings", READING).status()).isEqualTo(200);
    CompletableFuture<Answer> write;
    CompletableFuture<byte[]> ledger;
    CompletableFuture<String> csv;
    try (Connection locker = source.getConnection();
        Statement lock = locker.createStatement()) {
      locker.setAutoCommit(false);
      lock.execute("lock table reading in access exclusive mode");
      write =
          CompletableFuture.supplyAsync(
              () -> rig.postJson("/readings", READING.replace("21:00", "22:00")));
      csv = CompletableFuture.supplyAsync(() -> rig.getText("/readings", "text/csv"));
      ledger = CompletableFuture.supplyAsync(this::ledger);
      Thread.sleep(LONGER_THAN_PATIENCE_MS);
      assertThat(write).isNotDone();
      assertThat(csv).isNotDone();
      assertThat(ledger).isNotDone();
      locker.rollback();
    }
    assertThat(write.get(LONGEST.toSeconds(), TimeUnit.SECONDS).status()).isEqualTo(200);
    assertThat(csv.get(LONGEST.toSeconds(), TimeUnit.SECONDS)).contains("2026-03-01T21:00:00Z");
    assertThat(ledger.get(LONGEST.toSeconds(), TimeUnit.SECONDS)).startsWith('P', 'K');
  }

  private byte[] ledger() {
    byte[] zip =
        http.get()
            .uri("/api/rigs/patience-export/ledger.zip")
            .exchange()
            .expectStatus()
            .isOk()
            .expectBody()
            .returnResult()
            .getResponseBodyContent();
    assertThat(zip).isNotNull();
    return zip;
  }
}

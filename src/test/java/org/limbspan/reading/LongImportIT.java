package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.ReadingLines;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.client.RestTestClient;

/** Long files, and several of them at once. */
@LimbspanIT
class LongImportIT {

  @Autowired private RestTestClient http;
  @Autowired private JdbcClient jdbc;

  @Test
  void takesAHundredThousandLinesAndGivesThemOutAgain() {
    RigClient rig = RigClient.described(http, "long-csv");
    String csv = ReadingLines.csv(0, 100_000);
    Answer answer = rig.postCsv("/readings", csv);
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.body().path("stored").asInt()).isEqualTo(100_000);
    assertThat(rows(rig)).isEqualTo(100_000);

    Answer again = rig.postCsv("/readings", csv);
    assertThat(again.body().path("alreadyHeld").asInt()).isEqualTo(100_000);
    assertThat(rows(rig)).isEqualTo(100_000);

    String export = rig.getText("/readings", "text/csv");
    assertThat(export.lines().count()).isEqualTo(100_001);
  }

  @Test
  void refusesMoreLinesThanOneRequestMayHold() {
    RigClient rig = RigClient.described(http, "too-long-csv");
    Answer answer = rig.postCsv("/readings", ReadingLines.csv(0, 200_001));
    assertThat(answer.status()).isEqualTo(413);
    assertThat(rows(rig)).isZero();
  }

  @Test
  void storesEachLineOnceWhenTwoClientsSendTheSameAtOnce() throws Exception {
    RigClient rig = RigClient.described(http, "two-clients");
    String csv = ReadingLines.csv(130_000, 2000);
    List<Answer> answers = atOnce(4, client -> rig.postCsv("/readings", csv));
    assertThat(answers).extracting(Answer::status).containsOnly(200);
    assertThat(answers.stream().mapToInt(each -> each.body().path("stored").asInt()).sum())
        .isEqualTo(2000);
    assertThat(answers.stream().mapToInt(each -> each.body().path("alreadyHeld").asInt()).sum())
        .isEqualTo(3 * 2000);
    assertThat(rows(rig)).isEqualTo(2000);
  }

  @Test
  void makesThePartitionOfAYearOnceWhenSeveralRigsNeedItAtOnce() throws Exception {
    List<RigClient> rigs =
        List.of(
            RigClient.described(http, "partition-a"),
            RigClient.described(http, "partition-b"),
            RigClient.described(http, "partition-c"),
            RigClient.described(http, "partition-d"));
    for (int year = 1985; year < 1991; year++) {
      String csv = ReadingLines.csvOfYear(year, 200);
      List<Answer> answers =
          atOnce(rigs.size(), client -> rigs.get(client).postCsv("/readings", csv));
      assertThat(answers).extracting(Answer::status).as("year " + year).containsOnly(200);
    }
    for (RigClient rig : rigs) {
      assertThat(rows(rig)).isEqualTo(6 * 200);
    }
  }

  @Test
  void readersAreNotShutOutWhileAPartitionIsMade() throws Exception {
    RigClient rig = RigClient.described(http, "partition-reader");
    rig.postCsv("/readings", ReadingLines.csvOfYear(1991, 500));
    List<Answer> answers =
        atOnce(
            4,
            client ->
                client == 0
                    ? rig.postCsv("/readings", ReadingLines.csvOfYear(1992, 500))
                    : rig.get("/readings?limit=500"));
    assertThat(answers).extracting(Answer::status).containsOnly(200);
  }

  private static List<Answer> atOnce(int clients, ClientCall call) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(clients);
    try {
      List<Callable<Answer>> calls =
          IntStream.range(0, clients)
              .<Callable<Answer>>mapToObj(client -> () -> call.of(client))
              .toList();
      List<Answer> answers = new ArrayList<>();
      for (Future<Answer> each : threads.invokeAll(calls)) {
        answers.add(each.get());
      }
      return answers;
    } finally {
      threads.shutdown();
    }
  }

  private interface ClientCall {
    Answer of(int client);
  }

  private long rows(RigClient rig) {
    return jdbc.sql(
            "select count(*) from reading where rig_id = (select id from rig where slug = :slug)")
        .param("slug", rig.slug())
        .query(Long.class)
        .single();
  }
}

package org.limbspan.platform.reads;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.limbspan.testing.Judged;
import org.limbspan.testing.RigClient;
import org.limbspan.testing.ServiceInstance;
import org.limbspan.testing.TestDatabase;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * A service over a primary and its standby. Which of them a page was read from shows where the
 * standby lags: its replay is paused, and something is changed on the primary beside the service.
 */
@ExtendWith(OutputCaptureExtension.class)
class StandbyIT {

  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final HttpClient HTTP = HttpClient.newHttpClient();

  /** Long enough for a test to look at a page on a busy machine before it is over. */
  private static final String MOST_BEHIND = "--limbspan.reads.most-behind=12s";

  private static TwoServers servers;
  private static ServiceInstance service;

  @BeforeAll
  static void startsWithoutItsStandbyAndFindsIt() throws Exception {
    servers = new TwoServers();
    service =
        ServiceInstance.over(
            servers.primaryDatabase(),
            "--limbspan.reads.standby-url=" + servers.standbyDatabase().url(),
            "--limbspan.reads.patience=4s",
            MOST_BEHIND);
    assertThat(page("/actuator/health").statusCode()).isEqualTo(200);
    assertThat(standbyHealth().path("status").asString()).isEqualTo("WARNING");
    servers.makeStandby();
  }

  @AfterAll
  static void ends() throws IOException {
    if (service != null) {
      service.close();
    }
    servers.close();
  }

  @BeforeEach
  void isReadAtTheBeginning() throws Exception {
    awaitReadingOfStandby();
  }

  @AfterEach
  void replaysAgain() throws Exception {
    TwoServers.run(servers.standbyDatabase(), "select pg_wal_replay_resume()");
  }

  @Test
  void readsPagesFromTheStandbyAndWhatItJustWroteFromThePrimary() throws Exception {
    RigClient rig = rig("standby-own");
    String old = changeUnseen("standby-own");
    assertThat(page("/rigs/standby-own").body()).contains(old);

    assertThat(enterReading(rig)).isEqualTo(200);

    assertThat(rig.get("/readings").body().path("readings")).hasSize(1);
    assertThat(nameOf("standby-own")).isNotEqualTo(old);
    assertThat(page("/rigs/standby-own").body()).contains(nameOf("standby-own"));
    resume();
    awaitReadingOfStandby();
  }

  @Test
  void writesToThePrimaryAndJudgesWhatIsThere() throws Exception {
    RigClient rig = rig("standby-judged");
    pause();
    assertThat(enterReading(rig)).isEqualTo(200);
    // judged while the standby knows of no reading
    await(
        () ->
            TwoServers.ask(
                    servers.primaryDatabase(),
                    """
                    select j.revision = r.ledger_revision
                    from rig r left join judgement j on j.rig_id = r.id
                    where r.slug = 'standby-judged'
                    """)
                .equals("t"));
    assertThat(TwoServers.ask(servers.standbyDatabase(), "select count(*) from reading"))
        .isNotEqualTo(TwoServers.ask(servers.primaryDatabase(), "select count(*) from reading"));
    assertThat(rig.get("/cycle").body().path("pending").asBoolean(true)).isFalse();
  }

  @Test
  void leavesAStandbyThatIsTooFarBehind(CapturedOutput output) throws Exception {
    rig("standby-behind");
    int before = output.getOut().length();
    String old = changeUnseen("standby-behind");
    await(() -> !nameOf("standby-behind").equals(old));
    await(() -> standbyHealth().path("details").path("use").asString().equals("behind"));
    assertThat(standbyHealth().path("details").path("why").asString()).contains("12000 ms");
    assertThat(output.getOut().substring(before)).containsOnlyOnce("more than 12000 ms behind");
    resume();
    awaitReadingOfStandby();
  }

  @Test
  void goesOnWithoutAStandbyThatDiesAndComesBackToIt(CapturedOutput output) throws Exception {
    rig("standby-dies");
    int before = output.getOut().length();
    servers.killStandby();
    for (int i = 0; i < 20; i++) {
      assertThat(page("/rigs/standby-dies").statusCode()).isEqualTo(200);
      Thread.sleep(200);
    }
    assertThat(standbyHealth().path("details").path("use").asString()).isEqualTo("away");
    assertThat(page("/actuator/health").statusCode()).isEqualTo(200);
    assertThat(output.getOut().substring(before))
        .containsOnlyOnce("pages read the primary, not the standby");
    servers.startStandby();
    awaitReadingOfStandby();
    assertThat(output.getOut().substring(before)).containsOnlyOnce("pages read the standby");
  }

  @Test
  void answersPagesWhileTheStandbyIsFrozen() throws Exception {
    rig("standby-frozen");
    servers.signalStandby("STOP");
    try {
      for (int i = 0; i < 10; i++) {
        assertThat(page("/rigs/standby-frozen").statusCode()).isEqualTo(200);
      }
      await(() -> standbyHealth().path("details").path("use").asString().equals("away"));
    } finally {
      servers.signalStandby("CONT");
    }
    awaitReadingOfStandby();
  }

  /** Sessions ended by the server show only with the next statement, within a page. */
  @Test
  void readsOnceMoreWhatTheStandbyBrokeOff() throws Exception {
    rig("standby-ended");
    for (int i = 0; i < 10; i++) {
      assertThat(page("/rigs/standby-ended").statusCode()).isEqualTo(200);
      TwoServers.run(
          servers.standbyDatabase(),
          "select pg_terminate_backend(pid) from pg_stat_activity where pid <> pg_backend_pid()"
              + " and backend_type = 'client backend'");
      assertThat(page("/rigs/standby-ended").statusCode()).isEqualTo(200);
    }
  }

  @Test
  void asksThePrimaryForWhatAnotherInstanceHasJustEntered() throws Exception {
    pause();
    TwoServers.run(
        servers.primaryDatabase(),
        """
        insert into rig (slug, name, latitude_deg, longitude_deg, elevation_m, time_zone, created_at)
        values ('standby-elsewhere', 'Entered elsewhere', 10, 10, 10, 'UTC', now())
        """);
    assertThat(nameOf("standby-elsewhere")).isEqualTo("Entered elsewhere");
  }

  @Test
  void doesNotReadAServerThatIsNoStandbyOfItsPrimary() throws Exception {
    assertThat(whyNotRead(TestDatabase.fresh(), servers.standbyDatabase()))
        .contains("another database");
    assertThat(whyNotRead(servers.primaryDatabase(), servers.primaryDatabase()))
        .contains("no standby");
  }

  private static String whyNotRead(TestDatabase primary, TestDatabase other) throws Exception {
    ReadProperties usual =
        new ReadProperties(null, null, null, Duration.ofSeconds(3), Duration.ofSeconds(10));
    try (Standby standby =
        new Standby(
            account(primary),
            account(other),
            1,
            "select 1",
            new Writes(),
            usual,
            Clock.systemUTC())) {
      await(() -> !standby.stand().why().equals("not looked at yet"));
      assertThat(standby.isFit()).isFalse();
      assertThat(standby.stand().use()).isEqualTo(StandbyStand.Use.AWAY);
      return standby.stand().why();
    }
  }

  private static Account account(TestDatabase database) {
    return new Account(database.url(), database.username(), database.password());
  }

  private static RigClient rig(String slug) throws Exception {
    RigClient rig = RigClient.described(service.http(), slug);
    await(
        () ->
            TwoServers.ask(
                    servers.standbyDatabase(),
                    "select count(*) from rig where slug = '" + slug + "'")
                .equals("1"));
    Judged.get(rig, "/cycle");
    awaitReadingOfStandby();
    return rig;
  }

  private static int enterReading(RigClient rig) {
    return rig.postJson(
            "/readings",
            """
            {"takenAt": "2026-03-01T21:00:00Z", "axis": "horizontal", "diameterArcmin": 31.2,
             "uncertaintyArcmin": 0.05}""")
        .status();
  }

  private static void pause() throws Exception {
    awaitReadingOfStandby();
    TwoServers.run(servers.standbyDatabase(), "select pg_wal_replay_pause()");
    await(
        () ->
            TwoServers.ask(servers.standbyDatabase(), "select pg_get_wal_replay_pause_state()")
                .equals("paused"));
  }

  private static void resume() throws SQLException {
    TwoServers.run(servers.standbyDatabase(), "select pg_wal_replay_resume()");
  }

  /**
   * Changes a rig's name on the primary, beside the service, so that a page still shows the old
   * one, which only the standby has. The service itself may have written just before, as it does
   * now and then of its own accord; then the page is right to show the new one, and it is tried
   * again.
   *
   * @return the old name
   */
  private static String changeUnseen(String slug) throws Exception {
    for (int change = 1; change <= 5; change++) {
      pause();
      String old = TwoServers.ask(servers.standbyDatabase(), nameSql(slug));
      TwoServers.run(
          servers.primaryDatabase(),
          "update rig set name = 'Changed %d times' where slug = '%s'".formatted(change, slug));
      if (nameOf(slug).equals(old)) {
        return old;
      }
      resume();
    }
    throw new AssertionError("the standby was never read");
  }

  private static String nameSql(String slug) {
    return "select name from rig where slug = '" + slug + "'";
  }

  private static String nameOf(String slug) throws Exception {
    return new JsonMapper().readTree(page("/api/rigs/" + slug).body()).path("name").asString();
  }

  /** Until it holds all that this service wrote, judgements included. */
  private static void awaitReadingOfStandby() throws Exception {
    await(
        () ->
            service.bean(Standby.class).isFit()
                && standbyHealth().path("details").path("use").asString().equals("read"));
  }

  private static JsonNode standbyHealth() throws Exception {
    return health(service);
  }

  private static JsonNode health(ServiceInstance its) throws Exception {
    return new JsonMapper()
        .readTree(get(its.address() + "/actuator/health").body())
        .path("components")
        .path("standby");
  }

  private static HttpResponse<String> page(String path) throws Exception {
    return get(service.address() + path);
  }

  private static HttpResponse<String> get(String address) throws Exception {
    return HTTP.send(
        HttpRequest.newBuilder(URI.create(address)).timeout(PATIENCE).build(),
        HttpResponse.BodyHandlers.ofString());
  }

  private static void await(Callable<Boolean> wanted) throws Exception {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    while (!wanted.call()) {
      assertThat(System.nanoTime()).as("still waiting").isLessThan(deadline);
      Thread.sleep(50);
    }
  }
}

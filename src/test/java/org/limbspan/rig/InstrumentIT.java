package org.limbspan.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** Setups and calibrations over HTTP, as they come, come again, come late and are taken back. */
@LimbspanIT
class InstrumentIT {

  private static final String CSV_HEADER =
      "taken_at,target_length_mm,target_length_uncertainty_mm,target_distance_m,"
          + "target_distance_uncertainty_m,measured_px,measured_uncertainty_px\n";

  @Autowired private RestTestClient http;
  @Autowired private Rigs rigs;

  @Test
  void splitsHistoryCorrectlyWhenAnEarlierSetupIsEnteredLater() {
    RigClient rig = RigClient.described(http, "instrument-late");
    rig.postCsv(
        "/calibrations",
        CSV_HEADER
            + "2026-01-10T12:00:00Z,297,0.15,50,0.02,1100,1.1\n"
            + "2026-02-10T12:00:00Z,297,0.15,50,0.02,1200,1.1\n"
            + "2026-03-10T12:00:00Z,297,0.15,50,0.02,1300,1.1\n");
    assertThat(setup(rig, "2026-03-01T00:00:00Z").body().path("number").asInt()).isEqualTo(1);
    assertThat(setup(rig, "2026-02-01T01:00:00+01:00").body().path("number").asInt()).isEqualTo(1);

    JsonNode setups = rig.get("/setups").body();
    assertThat(setups.size()).isEqualTo(3);
    assertThat(setups.get(0).path("endedAt").asString()).isEqualTo("2026-02-01T00:00:00Z");
    assertThat(setups.get(1).path("startedAt").asString()).isEqualTo("2026-02-01T00:00:00Z");
    assertThat(setups.get(1).path("endedAt").asString()).isEqualTo("2026-03-01T00:00:00Z");
    assertThat(setups.get(2).path("number").asInt()).isEqualTo(2);
    assertThat(
            rig.get("/calibrations").body().valueStream().map(each -> each.path("setup").asInt()))
        .containsExactly(0, 1, 2);
  }

  @Test
  void holdsASetupThatIsSentTwiceOnce() {
    RigClient rig = RigClient.described(http, "instrument-twice");
    assertThat(setup(rig, "2026-02-01T00:00:00Z").status()).isEqualTo(201);
    Answer again = setup(rig, "2026-02-01T01:00:00+01:00");
    assertThat(again.status()).isEqualTo(200);
    assertThat(again.body().path("outcome").asString()).isEqualTo("already-held");
    assertThat(rig.get("/setups").body().size()).isEqualTo(2);
  }

  @Test
  void refusesAnotherNoteForAHeldSetupUnlessItSupersedes() {
    RigClient rig = RigClient.described(http, "instrument-note");
    setup(rig, "2026-02-01T00:00:00Z");
    String noted = "{\"startedAt\": \"2026-02-01T00:00:00Z\", \"note\": \"new lens\"%s}";
    assertThat(rig.postJson("/setups", noted.formatted("")).status()).isEqualTo(409);
    assertThat(rig.postJson("/setups", noted.formatted(", \"supersedes\": true")).status())
        .isEqualTo(201);
    assertThat(rig.get("/setups").body().get(1).path("note").asString()).isEqualTo("new lens");
    assertThat(rig.get("/setups").body().size()).isEqualTo(2);
  }

  @Test
  void takesASetupBackButNeverTheFirst() {
    RigClient rig = RigClient.described(http, "instrument-withdraw");
    long id = setup(rig, "2026-02-01T00:00:00Z").body().path("id").asLong();
    assertThat(withdraw(rig, "setups", id).status()).isEqualTo(204);
    assertThat(withdraw(rig, "setups", id).status()).as("once more").isEqualTo(204);
    assertThat(rig.get("/setups").body().size()).isEqualTo(1);
    assertThat(rig.get("/setups").body().get(0).has("endedAt")).isFalse();

    Answer again = setup(rig, "2026-02-01T00:00:00Z");
    assertThat(again.body().path("outcome").asString()).isEqualTo("held-as-withdrawn");
    assertThat(rig.get("/setups").body().size()).isEqualTo(1);

    long first = rig.get("/setups").body().get(0).path("id").asLong();
    assertThat(withdraw(rig, "setups", first).status()).isEqualTo(409);
    assertThat(withdraw(rig, "setups", 987_654_321).status()).isEqualTo(404);
  }

  @Test
  void refusesAnotherMeasureForAHeldPhotographUnlessItSupersedes() {
    RigClient rig = RigClient.described(http, "instrument-conflict");
    String line = "2026-01-10T12:00:00Z,297,0.15,%s,0.02,1100,1.1\n";
    rig.postCsv("/calibrations", CSV_HEADER + line.formatted("50"));
    Answer conflict = rig.postCsv("/calibrations", CSV_HEADER + line.formatted("49"));
    assertThat(conflict.status()).isEqualTo(409);
    assertThat(conflict.violation("takenAt").path("line").asInt()).isEqualTo(2);
    Answer superseded =
        rig.postCsv("/calibrations?supersede=true", CSV_HEADER + line.formatted("49"));
    assertThat(superseded.status()).isEqualTo(201);
    JsonNode held = rig.get("/calibrations").body();
    assertThat(held.size()).isEqualTo(1);
    assertThat(held.get(0).path("targetDistanceM").asDouble()).isEqualTo(49);
    Answer old = rig.postCsv("/calibrations", CSV_HEADER + line.formatted("50"));
    assertThat(old.status()).as("the old file again changes nothing").isEqualTo(200);
    assertThat(rig.get("/calibrations").body().get(0).path("targetDistanceM").asDouble())
        .isEqualTo(49);
  }

  @Test
  void takesACalibrationBack() {
    RigClient rig = RigClient.described(http, "instrument-calibration");
    rig.postCsv("/calibrations", CSV_HEADER + "2026-01-10T12:00:00Z,297,0.15,50,0.02,1100,1.1\n");
    long id = rig.get("/calibrations").body().get(0).path("id").asLong();
    assertThat(withdraw(rig, "calibrations", id).status()).isEqualTo(204);
    assertThat(rig.get("/calibrations").body().isEmpty()).isTrue();
    assertThat(rig.get("/setups").body().get(0).has("plateScaleArcsecPerPx")).isFalse();
    Answer again =
        rig.postCsv(
            "/calibrations", CSV_HEADER + "2026-01-10T12:00:00Z,297,0.15,50,0.02,1100,1.1\n");
    assertThat(again.body().get(0).path("outcome").asString()).isEqualTo("held-as-withdrawn");
    assertThat(withdraw(rig, "calibrations", 987_654_321).status()).isEqualTo(404);
  }

  @Test
  void takesSeveralPairsOfStarsInOnePhotograph() {
    RigClient rig = RigClient.described(http, "instrument-stars");
    String pair =
        """
        {"takenAt": "2026-01-10T22:00:00Z", "method": "star-pair", "separationArcmin": %s,
         "separationUncertaintyArcmin": 0.003, "measuredPx": %s, "measuredUncertaintyPx": 0.6}""";
    Answer answer =
        rig.postJson(
            "/calibrations",
            "[" + pair.formatted("30", "1500") + "," + pair.formatted("20", "1000") + "]");
    assertThat(answer.status()).as(answer.toString()).isEqualTo(201);
    assertThat(answer.body().get(0).path("plateScaleArcsecPerPx").asDouble()).isEqualTo(1.2);
    assertThat(rig.get("/calibrations").body().size()).isEqualTo(2);
  }

  @Test
  void countsEveryChangeAndNoRepetition() {
    RigClient rig = RigClient.described(http, "instrument-revision");
    long rigId = rigs.find("instrument-revision").id();
    long before = rigs.revision(rigId);
    setup(rig, "2026-02-01T00:00:00Z");
    assertThat(rigs.revision(rigId)).isEqualTo(before + 1);
    setup(rig, "2026-02-01T00:00:00Z");
    assertThat(rigs.revision(rigId)).isEqualTo(before + 1);
  }

  @Test
  void givesASlugToOneOfSeveralClientsThatAskAtOnce() {
    List<Integer> statuses =
        IntStream.range(0, 6)
            .parallel()
            .mapToObj(
                client ->
                    new RigClient(http, "instrument-race")
                        .describe(
                            """
                            {"slug": "instrument-race", "name": "Client %d", "latitudeDeg": 48.2,
                             "longitudeDeg": 16.4, "elevationM": 170, "timeZone": "Europe/Vienna"}"""
                                .formatted(client))
                        .status())
            .toList();
    assertThat(statuses).containsOnly(201, 409).containsOnlyOnce(201);
    assertThat(new RigClient(http, "instrument-race").get("/setups").body().size()).isEqualTo(1);
  }

  private static Answer setup(RigClient rig, String startedAt) {
    return rig.postJson("/setups", "{\"startedAt\": \"" + startedAt + "\"}");
  }

  private static Answer withdraw(RigClient rig, String what, long id) {
    return rig.postJson("/" + what + "/" + id + "/withdraw", "{\"reason\": \"a mistake\"}");
  }
}

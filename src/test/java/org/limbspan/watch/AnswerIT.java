package org.limbspan.watch;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.limbspan.testing.Answer;
import org.limbspan.testing.Judged;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.ReferenceFolder;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** What becomes of an alert once its owner has answered. */
@LimbspanIT
class AnswerIT {

  @Autowired private RestTestClient http;

  @Test
  void opensASetupWhereTheZoomMovedAndSettles() {
    RigClient rig = sent("step-0.5", "answer-zoom");
    JsonNode alert = only(rig);

    Answer answer =
        rig.postJson(
            "/alerts/" + alert.path("id").asString() + "/answer",
            """
            {"cause": "zoom-moved", "note": "the strap caught the ring",
             "changedAt": "2024-06-20T15:00:00+02:00"}""");

    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.body().path("state").asString()).isEqualTo("answered");
    assertThat(answer.body().path("answers").get(0).path("consequence").asString())
        .contains("A setup was opened at 20 June 2024, 14:00 (Atlantic/Canary)");
    assertThat(rig.get("/setups").body().toString()).contains("2024-06-20T13:00:00Z");
    JsonNode after = only(rig);
    assertThat(after.path("state").asString()).isEqualTo("settled");
    assertThat(after.path("id").asString()).isEqualTo(alert.path("id").asString());
    assertThat(Judged.get(rig, "/cycle").path("swing").path("verdict").asString())
        .isEqualTo("agrees");
  }

  @Test
  void infersTheScaleOfASetupWithoutCalibrationAndSaysSo() {
    ReferenceFolder folder = new ReferenceFolder("clean-pairs");
    RigClient rig = folder.describe(http, "answer-unscaled");
    rig.postJson("/setups", "{\"startedAt\": \"2024-01-26T18:00:00Z\"}");
    rig.postCsv("/readings", folder.readings());

    JsonNode cycle = Judged.get(rig, "/cycle");

    assertThat(cycle.path("readingCount").asInt())
        .isEqualTo(folder.truth().path("uniqueReadings").asInt());
    assertThat(cycle.path("remarks").toString()).contains("not independent");
  }

  @Test
  void relabelsReadingsLoggedUnderTheWrongAxis() {
    RigClient rig = sent("vertical-as-horizontal", "answer-axis");
    JsonNode alert = only(rig);
    int readingsBefore = Judged.get(rig, "/cycle").path("readingCount").asInt();

    Answer answer =
        rig.postJson(
            "/alerts/" + alert.path("id").asString() + "/answer",
            """
            {"cause": "wrong-entry", "note": "measured top to bottom since the new desk",
             "changedAt": "2023-09-23T03:00:00Z", "relabelAxis": "vertical"}""");

    assertThat(answer.status()).as(answer.body().toString()).isEqualTo(200);
    assertThat(answer.body().path("answers").get(0).path("consequence").asString())
        .contains("61 readings were entered again as vertical");
    assertThat(only(rig).path("state").asString()).isEqualTo("settled");
    assertThat(Judged.get(rig, "/cycle").path("readingCount").asInt())
        .isGreaterThan(readingsBefore);
  }

  @Test
  void refusesAnUnknownCauseNamingTheKnownOnes() {
    RigClient rig = sent("step-minus-1", "answer-unknown");

    Answer answer =
        rig.postJson(
            "/alerts/" + only(rig).path("id").asString() + "/answer", "{\"cause\": \"gremlins\"}");

    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.violation("cause").path("expected").asString()).contains("zoom-moved");
  }

  @Test
  void doesNotKnowAnAlertOfAnotherRig() {
    RigClient rig = sent("step-minus-1", "answer-owner");
    RigClient stranger = RigClient.described(http, "answer-stranger");

    Answer answer =
        stranger.postJson(
            "/alerts/" + only(rig).path("id").asString() + "/answer", "{\"cause\": \"weather\"}");

    assertThat(answer.status()).isEqualTo(404);
  }

  private RigClient sent(String folder, String slug) {
    ReferenceFolder reference = new ReferenceFolder(folder);
    RigClient rig = reference.describe(http, slug);
    assertThat(rig.postCsv("/readings", reference.readings()).status()).isEqualTo(200);
    return rig;
  }

  private static JsonNode only(RigClient rig) {
    JsonNode alerts = Judged.get(rig, "/alerts").path("alerts");
    assertThat(alerts).as(alerts.toString()).hasSize(1);
    return alerts.get(0);
  }
}

package org.limbspan.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.limbspan.testing.Answer;
import org.limbspan.testing.Judged;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** A rig's own horizon over HTTP. */
@LimbspanIT
class HorizonIT {

  private static final String HEDGE =
      """
      [{"azimuthDeg": 90, "altitudeDeg": 12}, {"azimuthDeg": 270, "altitudeDeg": 6.5},
       {"azimuthDeg": 0, "altitudeDeg": 3}]""";

  @Autowired private RestTestClient http;

  @Test
  void keepsTheNewestAndAllBefore() {
    RigClient rig = RigClient.described(http, "horizon-kept");
    assertThat(rig.get("/horizon").body().path("points").size()).isZero();
    Answer first = rig.putJson("/horizon", HEDGE);
    assertThat(first.status()).as(first.toString()).isEqualTo(201);
    assertThat(first.body().path("points").get(0).path("azimuthDeg").asDouble()).isZero();
    Answer again = rig.putJson("/horizon", HEDGE);
    assertThat(again.status()).isEqualTo(200);
    assertThat(again.body().path("outcome").asString()).isEqualTo("already-held");
    assertThat(again.body().path("version").asInt()).isEqualTo(1);
    Answer newer = rig.putCsv("/horizon", "altitude_deg;azimuth_deg\n7,5;10\n8;200\n");
    assertThat(newer.status()).as(newer.toString()).isEqualTo(201);
    assertThat(newer.body().path("version").asInt()).isEqualTo(2);
    assertThat(rig.getText("/horizon", "text/csv"))
        .isEqualTo("azimuth_deg,altitude_deg\r\n10.0,7.5\r\n200.0,8.0\r\n");
  }

  @Test
  void takesBackWhatStandsAndCanBeEnteredAnew() {
    RigClient rig = RigClient.described(http, "horizon-back");
    assertThat(rig.postJson("/horizon/withdraw", "{\"reason\": \"none\"}").status()).isEqualTo(404);
    rig.putJson("/horizon", HEDGE);
    assertThat(rig.postJson("/horizon/withdraw", "{}").status()).isEqualTo(422);
    assertThat(rig.postJson("/horizon/withdraw", "{\"reason\": \"hedge cut\"}").status())
        .isEqualTo(204);
    assertThat(rig.get("/horizon").body().path("points").size()).isZero();
    assertThat(rig.putJson("/horizon", HEDGE).body().path("version").asInt()).isEqualTo(3);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[{\"azimuthDeg\": 361, \"altitudeDeg\": 1}, {\"azimuthDeg\": 1, \"altitudeDeg\": 1}]|azimuthDeg|361|0 to 360|1",
        "[{\"azimuthDeg\": 1, \"altitudeDeg\": 1}, {\"azimuthDeg\": 2, \"altitudeDeg\": 91}]|altitudeDeg|91|0 to 90|2",
        "[{\"azimuthDeg\": 1, \"altitudeDeg\": -1}, {\"azimuthDeg\": 2, \"altitudeDeg\": 9}]|altitudeDeg|-1|0 to 90|1",
        "[{\"azimuthDeg\": 1}, {\"azimuthDeg\": 2, \"altitudeDeg\": 9}]|altitudeDeg||0 to 90|1",
        "[{\"azimuthDeg\": \"east\", \"altitudeDeg\": 3}, {\"azimuthDeg\": 2, \"altitudeDeg\": 9}]|azimuthDeg|east|0 to 360|1",
        "[{\"azimuthDeg\": 2, \"altitudeDeg\": 9, \"tree\": \"oak\"}]|tree|oak|azimuthDeg, altitudeDeg|1",
        "[{\"azimuthDeg\": 2, \"altitudeDeg\": 9}]|points|1|2 to 720 points|",
        "[]|points|0|2 to 720 points|",
      })
  void namesWhatCannotBeTaken(
      String json, String field, String value, String expected, String line) {
    RigClient rig = new RigClient(http, "horizon-refused");
    if (rig.get("").status() == 404) {
      RigClient.described(http, "horizon-refused");
    }
    Answer answer = rig.putJson("/horizon", json);
    assertThat(answer.status()).isEqualTo(422);
    JsonNode violation = answer.body().path("violations").get(0);
    assertThat(violation.path("field").asString()).isEqualTo(field);
    assertThat(violation.path("value").asString("")).startsWith(value == null ? "" : value);
    assertThat(violation.path("expected").asString()).contains(expected);
    assertThat(violation.path("line").asString("")).isEqualTo(line == null ? "" : line);
    assertThat(rig.get("/horizon").body().path("points").size()).isZero();
  }

  @Test
  void tellsRiseAndSetOverTheLineBesideTheTrueOnes() {
    RigClient rig = RigClient.described(http, "horizon-passes");
    String week = "/passes?from=2026-02-01T00:00:00Z&to=2026-02-08T00:00:00Z";
    JsonNode open = rig.get(week).body();
    assertThat(open.get(0).has("overHorizonLine")).isFalse();
    rig.putJson("/horizon", HEDGE);
    JsonNode passes = rig.get(week).body();
    assertThat(passes.size()).isEqualTo(open.size());
    for (int i = 0; i < passes.size(); i++) {
      JsonNode over = passes.get(i).path("overHorizonLine");
      assertThat(over.path("shows").asBoolean()).isTrue();
      assertThat(instant(over, "riseAt")).isAfter(instant(passes.get(i), "riseAt"));
      assertThat(instant(over, "setAt")).isBefore(instant(passes.get(i), "setAt"));
      assertThat(passes.get(i).path("riseAt")).isEqualTo(open.get(i).path("riseAt"));
    }
    String all =
        "[{\"azimuthDeg\": 0, \"altitudeDeg\": 90}, {\"azimuthDeg\": 9, \"altitudeDeg\": 90}]";
    rig.putJson("/horizon", all);
    JsonNode hidden = rig.get(week).body().get(0).path("overHorizonLine");
    assertThat(hidden.path("shows").asBoolean()).isFalse();
    assertThat(hidden.has("riseAt")).isFalse();
  }

  @Test
  void countsInTheLedgerSoThatTheJudgementIsRenewed() {
    RigClient rig = RigClient.described(http, "horizon-counts");
    rig.putJson("/horizon", HEDGE);
    assertThat(Judged.get(rig, "/cycle").path("readingCount").asInt()).isZero();
  }

  private static Instant instant(JsonNode node, String field) {
    return Instant.parse(node.path(field).asString());
  }
}

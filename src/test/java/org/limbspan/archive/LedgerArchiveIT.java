package org.limbspan.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.Judged;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.ReferenceFolder;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A ledger goes out of one installation and into another, whole or not at all. */
@LimbspanIT
class LedgerArchiveIT {

  private static final JsonMapper MAPPER = new JsonMapper();

  /** Parts that the first layout had not. */
  private static final Set<String> LATER_PARTS =
      Set.of("horizon_line", "photo", "photo_measurement", "photo_reading");

  private static OtherInstallation other;

  @Autowired private RestTestClient http;

  @BeforeAll
  static void startsTheOther() {
    other = new OtherInstallation();
  }

  @AfterAll
  static void stopsTheOther() {
    other.close();
  }

  @Test
  void comesToTheSameJudgementElsewhereAndGoesOutAgainInTheSameBytes() throws Exception {
    RigClient rig = eventful("archive-eventful");
    byte[] ledger = LedgerZip.of(http, rig.slug(), "");
    HttpResponse<String> answer = other.take(ledger);
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
    assertThat(MAPPER.readTree(answer.body()).path("rows").path("answer").asInt()).isEqualTo(1);

    RigClient there = new RigClient(other.http(), rig.slug());
    for (String path : new String[] {"/alerts", "/cycle", "/nights", "/hypotheses"}) {
      assertThat(judgement(there, path)).isEqualTo(judgement(rig, path));
    }
    assertThat(there.get("/horizon").body()).isEqualTo(rig.get("/horizon").body());
    assertThat(there.get("/horizon").body().path("version").asInt()).isEqualTo(3);
    assertThat(withoutIds(there.get("/readings?limit=1000").body()))
        .isEqualTo(withoutIds(rig.get("/readings?limit=1000").body()));
    byte[] again = LedgerZip.of(other.http(), rig.slug(), "");
    assertThat(LedgerZip.texts(again)).isEqualTo(LedgerZip.texts(ledger));
    assertThat(again).isEqualTo(ledger);
  }

  @Test
  void describesEveryFileWithItsHash() throws Exception {
    RigClient rig = RigClient.described(http, "archive-hashes");
    Map<String, byte[]> files = LedgerZip.files(LedgerZip.of(http, rig.slug(), ""));
    JsonNode description = MAPPER.readTree(LedgerZip.file(files, "datapackage.json"));
    assertThat(description.path("profile").asString()).isEqualTo("tabular-data-package");
    assertThat(description.path("resources").size()).isEqualTo(files.size() - 2);
    for (JsonNode resource : description.path("resources")) {
      byte[] file = LedgerZip.file(files, resource.path("path").asString());
      assertThat(resource.path("bytes").asInt()).isEqualTo(file.length);
      assertThat(resource.path("hash").asString()).isEqualTo("sha256:" + LedgerZip.sha256(file));
      String header = new String(file, StandardCharsets.UTF_8).lines().findFirst().orElseThrow();
      assertThat(
              String.join(",", resource.path("schema").path("fields").findValuesAsString("name")))
          .isEqualTo(header);
    }
  }

  @Test
  void takesALedgerThatWasWrittenBeforeThereWereHorizonsAndPhotographs() throws Exception {
    RigClient rig = RigClient.described(http, "archive-older");
    HttpResponse<String> answer = other.take(asFirstWritten(LedgerZip.of(http, rig.slug(), "")));
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
    RigClient there = new RigClient(other.http(), rig.slug());
    assertThat(there.get("/horizon").body().path("points").size()).isZero();
  }

  @Test
  void refusesARigThatIsThere() throws Exception {
    RigClient rig = RigClient.described(http, "archive-twice");
    byte[] ledger = LedgerZip.of(http, rig.slug(), "");
    assertThat(other.take(ledger).statusCode()).isEqualTo(201);
    HttpResponse<String> again = other.take(ledger);
    assertThat(again.statusCode()).isEqualTo(409);
    assertThat(again.body()).contains("archive-twice").contains("slug");
  }

  @Test
  void refusesWhatWasChangedOrCutOff() throws Exception {
    RigClient rig = eventful("archive-damaged");
    byte[] ledger = LedgerZip.of(http, rig.slug(), "");
    byte[] cut = java.util.Arrays.copyOf(ledger, ledger.length / 2);
    assertThat(other.take(cut).statusCode()).isEqualTo(422);
    assertThat(other.take(new byte[0]).statusCode()).isEqualTo(422);
    assertThat(other.take("no zip".getBytes(StandardCharsets.UTF_8)).statusCode()).isEqualTo(422);
    HttpResponse<String> changed =
        other.take(
            LedgerZip.changed(ledger, "reading.csv", text -> text.replace("held", "hold"), false));
    assertThat(changed.statusCode()).isEqualTo(422);
    assertThat(changed.body()).contains("reading.csv").contains("sha256");
    assertThat(there("archive-damaged")).isEqualTo(404);
  }

  @Test
  void namesLineAndColumnOfWhatNoLedgerCanHold() throws Exception {
    RigClient rig = eventful("archive-wrong");
    byte[] ledger = LedgerZip.of(http, rig.slug(), "");
    HttpResponse<String> word =
        other.take(
            LedgerZip.changed(
                ledger,
                "calibration.csv",
                text -> text.replaceFirst("\n([^,]*),target,,1,[^,]*,", "\n$1,target,,1,long,"),
                true));
    assertThat(word.statusCode()).as(word.body()).isEqualTo(422);
    assertThat(word.body()).contains("calibration.csv: target_length_mm").contains("\"line\":2");
    HttpResponse<String> rule =
        other.take(
            LedgerZip.changed(
                ledger, "reading.csv", text -> text.replace(",horizontal,", ",slanted,"), true));
    assertThat(rule.statusCode()).as(rule.body()).isEqualTo(422);
    assertThat(rule.body()).contains("reading.csv").contains("slanted");
    HttpResponse<String> zone =
        other.take(
            LedgerZip.changed(
                ledger, "rig.csv", text -> text.replaceAll("[A-Z]\\w+/\\w+", "Mars/Base"), true));
    assertThat(zone.statusCode()).as(zone.body()).isEqualTo(422);
    assertThat(zone.body()).contains("time_zone").contains("Mars/Base");
    assertThat(there("archive-wrong")).isEqualTo(404);
  }

  private static int there(String slug) {
    return new RigClient(other.http(), slug).get("").status();
  }

  /**
   * A horizon taken back and entered anew, a step, its answer with a new setup, a corrected and a
   * withdrawn reading, frames and notes.
   */
  private RigClient eventful(String slug) {
    ReferenceFolder folder = new ReferenceFolder("step-0.5");
    RigClient rig = folder.describe(http, slug);
    rig.postCsv("/readings", folder.readings());
    rig.postJson(
        "/readings",
        """
        {"takenAt": "2024-12-24T20:00:00Z", "axis": "vertical",
         "framesPx": [1500.25, 1502.5, 1501], "altitudeDeg": 41.5, "exposureS": 0.0166,
         "iso": 100, "fNumber": 11, "sky": "haze, \\"thin\\"", "note": "two\\nlines"}""");
    rig.postJson(
        "/readings",
        """
        {"takenAt": "2024-12-24T20:00:00Z", "axis": "vertical", "diameterPx": 1501.75,
         "uncertaintyPx": 1.5, "supersedes": true}""");
    rig.putCsv("/horizon", "azimuth_deg,altitude_deg\n90,12.5\n270,4\n");
    rig.postJson("/horizon/withdraw", "{\"reason\": \"the hedge is cut\"}");
    rig.putCsv("/horizon", "azimuth_deg,altitude_deg\n90,6.25\n270,4\n");
    JsonNode alert = Judged.get(rig, "/alerts").path("alerts").get(0);
    assertThat(
            rig.postJson(
                    "/alerts/" + alert.path("id").asString() + "/answer",
                    """
                    {"cause": "zoom-moved", "note": "the ring was loose",
                     "changedAt": "2024-06-20T13:01:00Z"}""")
                .status())
        .isBetween(200, 201);
    Judged.get(rig, "/alerts");
    return rig;
  }

  private static String judgement(RigClient rig, String path) {
    ObjectNode body = (ObjectNode) Judged.get(rig, path);
    body.remove("judgedAt");
    return body.toString();
  }

  private static String withoutIds(JsonNode readings) {
    readings.path("readings").forEach(reading -> ((ObjectNode) reading).remove("id"));
    return readings.path("readings").toString();
  }

  /** The first layout: neither horizons nor photographs. */
  private static byte[] asFirstWritten(byte[] ledger) throws IOException {
    Map<String, byte[]> files = LedgerZip.files(ledger);
    LATER_PARTS.forEach(part -> assertThat(files.remove(part + ".csv")).as(part).isNotNull());
    byte[] described = LedgerZip.file(files, "datapackage.json");
    ObjectNode description = (ObjectNode) MAPPER.readTree(described);
    description.put("limbspanLayout", 1);
    ArrayNode resources = description.putArray("resources");
    for (JsonNode resource : MAPPER.readTree(described).path("resources")) {
      if (!LATER_PARTS.contains(resource.path("name").asString())) {
        resources.add(resource);
      }
    }
    files.put("datapackage.json", MAPPER.writeValueAsBytes(description));
    return LedgerZip.zip(files);
  }
}

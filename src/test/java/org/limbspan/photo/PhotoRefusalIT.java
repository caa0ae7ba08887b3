package org.limbspan.photo;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** What is said of files that give no reading. */
@LimbspanIT
class PhotoRefusalIT {

  private static final byte[] PLAIN = RenderedMoon.plainJpeg(RenderedMoon.scene(420, 101));

  @Autowired private RestTestClient http;
  @Autowired private JdbcClient jdbc;

  @Test
  void refusesEachFileInWordsAndTakesTheGoodOnes() {
    RigClient rig = RigClient.described(http, "refusal-each");
    byte[] good = at("2026:05:29 21:10:00");
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("text.jpg", "no picture at all".getBytes(StandardCharsets.UTF_8));
    files.put("cut.jpg", Arrays.copyOf(good, good.length / 2));
    files.put("raw.cr2", Arrays.copyOf(new byte[] {'I', 'I', 42, 0, 16, 0, 0, 0, 'C', 'R', 2}, 99));
    files.put("untold.jpg", PLAIN);
    files.put("twice.jpg", at("2025:10:26 02:30:00"));
    files.put("ahead.jpg", at("2999:05:29 21:10:00"));
    files.put("good.jpg", good);
    JsonNode answers = new PhotoClient(http, rig).send("", files);

    assertThat(answers.values().stream().map(each -> each.path("refusal").asString("")))
        .containsExactly(
            "not-an-image", "truncated", "raw", "no-time", "time-twice", "time-ahead", "");
    assertThat(answers.get(2).path("reason").asString()).contains("TIFF of 16 bits");
    assertThat(answers.get(3).path("reason").asString()).contains("takenAt");
    assertThat(answers.get(4).path("reason").asString()).contains("Europe/Vienna");
    assertThat(answers.get(5).path("reason").asString()).contains("taken at 2999-05-29T19:10:00Z");
    assertThat(answers.get(6).path("outcome").asString()).isEqualTo("measured");
    assertThat(rig.get("/readings").body().path("readings").size()).isEqualTo(1);
    assertThat(rig.get("/photos").body().path("photos").size()).isEqualTo(1);
  }

  @Test
  void takesAPhotographWithoutATimeWhenItsSenderTellsIt() {
    RigClient rig = RigClient.described(http, "refusal-told");
    JsonNode answer =
        new PhotoClient(http, rig)
            .send("?takenAt=2026-05-29T19:10:00Z&axis=limb-fit", "untold.jpg", PLAIN);
    assertThat(answer.path("takenAt").asString()).isEqualTo("2026-05-29T19:10:00Z");
    assertThat(answer.path("axis").asString()).isEqualTo("limb-fit");
    double mean =
        (answer.path("horizontalPx").asDouble() + answer.path("verticalPx").asDouble()) / 2;
    assertThat(answer.path("diameterPx").asDouble()).isEqualTo(mean);
    JsonNode reading = rig.get("/readings").body().path("readings").get(0);
    assertThat(reading.path("axis").asString()).isEqualTo("limb-fit");
  }

  @Test
  void asksForANewSetupWhenTheFocalLengthIsAnother() {
    RigClient rig = RigClient.described(http, "refusal-zoom");
    PhotoClient client = new PhotoClient(http, rig);
    client.send("", "a.jpg", at("2026:05:29 21:10:00"));
    byte[] zoomed =
        PictureBytes.jpeg(PLAIN, new ExifBlock().takenAt("2026:05:30 21:10:00").focalLengthMm(420));
    JsonNode refused = client.send("", "b.jpg", zoomed);
    assertThat(refused.path("refusal").asString()).isEqualTo("other-focal-length");
    assertThat(refused.path("question").asString()).contains("new setup");

    rig.postJson("/setups", "{\"startedAt\": \"2026-05-30T12:00:00+02:00\"}");
    JsonNode taken = client.send("", "b.jpg", zoomed);
    assertThat(taken.path("outcome").asString()).isEqualTo("measured");
    JsonNode readings = rig.get("/readings").body().path("readings");
    assertThat(readings.get(0).path("setup").asInt()).isZero();
    assertThat(readings.get(1).path("setup").asInt()).isEqualTo(1);
  }

  @Test
  void tellsOfRefusedFilesUntilTheyAreMeasured() {
    RigClient rig = RigClient.described(http, "refusal-kept");
    PhotoClient client = new PhotoClient(http, rig);
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("text.jpg", "no picture at all".getBytes(StandardCharsets.UTF_8));
    files.put("good.jpg", at("2026:05:29 21:10:00"));
    files.put("untold.jpg", PLAIN);
    client.send("?dryRun=true", files);
    assertThat(refused(rig)).isEmpty();

    client.send("", files);
    client.send("", "text-again.jpg", files.get("text.jpg"));
    assertThat(refused(rig)).containsExactly("text-again.jpg not-an-image", "untold.jpg no-time");

    client.send("?takenAt=2026-05-29T19:12:00Z", "untold.jpg", PLAIN);
    assertThat(refused(rig)).containsExactly("text-again.jpg not-an-image");
  }

  @Test
  void tellsOfNoMoreThanTheNewest() {
    RigClient rig = RigClient.described(http, "refusal-many");
    PhotoClient client = new PhotoClient(http, rig);
    for (int batch = 0; batch < 9; batch++) {
      Map<String, byte[]> files = new LinkedHashMap<>();
      for (int i = 0; i < 60; i++) {
        files.put("%d-%d.txt".formatted(batch, i), new byte[] {(byte) batch, (byte) i});
      }
      client.send("", files);
    }
    JsonNode kept = rig.get("/photos/refused?limit=500").body().path("refused");
    assertThat(kept.size()).isEqualTo(RefusalStore.MOST_KEPT);
    assertThat(kept.get(0).path("file").asString()).startsWith("8-");
  }

  @Test
  void tellsOfAPhotographThatANewerMethodRefuses() {
    RigClient rig = RigClient.described(http, "refusal-newer");
    JsonNode taken = new PhotoClient(http, rig).send("", "a.jpg", at("2026:05:29 21:10:00"));
    refuseByNewerMethod(taken.path("photoId").asLong());
    assertThat(refused(rig)).containsExactly("a.jpg refused-by-newer-method");
    JsonNode told = rig.get("/photos/refused").body().path("refused").get(0);
    assertThat(told.path("reason").asString()).isEqualTo("The limb is hidden.");
    assertThat(told.path("takenAt").asString()).isEqualTo("2026-05-29T19:10:00Z");
  }

  @Test
  void namesParametersThatMakeNoSense() {
    RigClient rig = RigClient.described(http, "refusal-query");
    PhotoClient client = new PhotoClient(http, rig);
    Answer axis = client.post("?axis=diagonal", Map.of("a.jpg", PLAIN));
    assertThat(axis.status()).isEqualTo(400);
    assertThat(axis.violation("axis").path("expected").asString())
        .isEqualTo("one of horizontal, vertical, limb-fit");
    Answer local = client.post("?takenAt=2026-05-29T21:10:00", Map.of("a.jpg", PLAIN));
    assertThat(local.status()).isEqualTo(400);
    assertThat(local.violation("takenAt").path("expected").asString()).contains("offset");
    Answer none = client.post("", Map.of());
    assertThat(none.status()).isIn(400, 422);
  }

  private void refuseByNewerMethod(long photoId) {
    jdbc.sql(
            """
            insert into photo_measurement (photo_id, method, outcome, reason, measured_at)
            values (:photoId, :method, 'refused', 'The limb is hidden.', now())
            """)
        .param("photoId", photoId)
        .param("method", Darkroom.METHOD + 1)
        .update();
  }

  private static List<String> refused(RigClient rig) {
    return rig.get("/photos/refused").body().path("refused").values().stream()
        .map(each -> each.path("file").asString() + " " + each.path("refusal").asString())
        .toList();
  }

  private static byte[] at(String local) {
    return PictureBytes.jpeg(PLAIN, ExifBlock.usual(local));
  }
}

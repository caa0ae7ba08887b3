package org.limbspan.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.limbspan.limb.render.MoonScene;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** A night of photographs becomes readings, however it arrives. */
@LimbspanIT
class PhotoNightIT {

  private static final long SEED = 101;
  private static final double[] DIAMETERS_PX = {419.2, 420.6, 421.4};

  /** Three visits to the camera in an invented night, three exposures each, sizes as rendered. */
  private static final Map<String, byte[]> NIGHT = night();

  @Autowired private RestTestClient http;

  @Test
  void makesThreeReadingsOfNineFiles() {
    RigClient rig = RigClient.described(http, "photo-night");
    JsonNode answers = new PhotoClient(http, rig).send("", NIGHT);

    assertThat(answers.size()).isEqualTo(9);
    Set<Long> readingIds = new LinkedHashSet<>();
    for (JsonNode answer : answers) {
      assertThat(answer.path("outcome").asString()).as(answer.toString()).isEqualTo("measured");
      readingIds.add(answer.path("readingId").asLong());
    }
    assertThat(readingIds).hasSize(3).doesNotContain(0L);

    JsonNode readings = rig.get("/readings").body().path("readings");
    assertThat(readings.size()).isEqualTo(3);
    for (int i = 0; i < 3; i++) {
      JsonNode reading = readings.get(i);
      double uncertainty = reading.path("uncertaintyPx").asDouble();
      assertThat(reading.path("framesPx").size()).isEqualTo(3);
      assertThat(reading.path("axis").asString()).isEqualTo("horizontal");
      assertThat(reading.path("diameterPx").asDouble())
          .isCloseTo(DIAMETERS_PX[i], within(3 * uncertainty));
      assertThat(uncertainty).isLessThan(0.005 * DIAMETERS_PX[i]);
      assertThat(readingIds).contains(reading.path("id").asLong());
    }
    // the camera's clock was at +02:00; the middle frame is two seconds after the first
    Instant middle = Instant.parse("2026-05-29T19:10:02Z");
    assertThat(Instant.parse(readings.get(0).path("takenAt").asString()))
        .isBetween(middle.minusMillis(500), middle.plusMillis(500));
  }

  @Test
  void endsTheSameHoweverTheFilesArrive() {
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (String name : List.of("IMG_0101.JPG", "IMG_0102.JPG", "IMG_0103.JPG", "IMG_0201.JPG")) {
      files.put(name, file(name));
    }
    RigClient whole = RigClient.described(http, "photo-whole");
    new PhotoClient(http, whole).send("", files);
    RigClient single = RigClient.described(http, "photo-single");
    for (String name : List.of("IMG_0103.JPG", "IMG_0201.JPG", "IMG_0101.JPG", "IMG_0102.JPG")) {
      new PhotoClient(http, single).send("", name, file(name));
    }

    JsonNode expected = whole.get("/readings").body().path("readings");
    JsonNode actual = single.get("/readings").body().path("readings");
    assertThat(actual.size()).isEqualTo(2);
    for (int i = 0; i < 2; i++) {
      for (String field : List.of("takenAt", "axis", "diameterPx", "uncertaintyPx", "framesPx")) {
        assertThat(actual.get(i).path(field)).isEqualTo(expected.get(i).path(field));
      }
    }
  }

  @Test
  void holdsAFileOnceHoweverOftenItIsSent() {
    RigClient rig = RigClient.described(http, "photo-twice");
    PhotoClient client = new PhotoClient(http, rig);
    byte[] file = file("IMG_0101.JPG");
    JsonNode first = client.send("", "IMG_0101.JPG", file);
    JsonNode again = client.send("", "copy of it.jpg", file);

    assertThat(again.path("alreadyHeld").asBoolean()).isTrue();
    assertThat(again.path("photoId")).isEqualTo(first.path("photoId"));
    assertThat(again.path("readingId")).isEqualTo(first.path("readingId"));
    assertThat(again.path("diameterPx")).isEqualTo(first.path("diameterPx"));
    assertThat(rig.get("/photos").body().path("photos").size()).isEqualTo(1);
    assertThat(rig.get("/readings").body().path("readings").size()).isEqualTo(1);
  }

  @Test
  void supersedesAReadingWhenAnotherFrameOfItArrives() {
    RigClient rig = RigClient.described(http, "photo-late");
    PhotoClient client = new PhotoClient(http, rig);
    long early = client.send("", "a.jpg", file("IMG_0101.JPG")).path("readingId").asLong();
    long late = client.send("", "b.jpg", file("IMG_0102.JPG")).path("readingId").asLong();

    assertThat(late).isNotEqualTo(early);
    JsonNode readings = rig.get("/readings").body().path("readings");
    assertThat(readings.size()).isEqualTo(1);
    assertThat(readings.get(0).path("id").asLong()).isEqualTo(late);
    assertThat(readings.get(0).path("note").asString()).contains("2 photographs: a.jpg, b.jpg");
    JsonNode frames = rig.get("/photos?readingId=" + late).body().path("photos");
    assertThat(frames.size()).isEqualTo(2);
    assertThat(frames.get(0).path("use").asString()).isEqualTo("used");
  }

  @Test
  void setsAnOddFrameAsideAndNamesIt() {
    RigClient rig = RigClient.described(http, "photo-odd");
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("even-1.jpg", frame(420, 1, "2026:05:29 21:10:00", 1, 250));
    files.put("odd.jpg", frame(424, 2, "2026:05:29 21:10:02", 1, 250));
    files.put("even-2.jpg", frame(420, 3, "2026:05:29 21:10:04", 1, 250));
    JsonNode answers = new PhotoClient(http, rig).send("", files);

    assertThat(answers.get(1).path("use").asString()).isEqualTo("set-aside");
    assertThat(answers.get(0).path("remarks").toString()).contains("odd.jpg was set aside");
    JsonNode reading = rig.get("/readings").body().path("readings").get(0);
    assertThat(reading.path("framesPx").size()).isEqualTo(2);
    assertThat(reading.path("diameterPx").asDouble()).isCloseTo(420, within(0.5));
  }

  @Test
  void measuresAndStoresNothingWhenOnlyTried() {
    RigClient rig = RigClient.described(http, "photo-tried");
    JsonNode answer =
        new PhotoClient(http, rig).send("?dryRun=true", "a.jpg", file("IMG_0101.JPG"));
    assertThat(answer.path("outcome").asString()).isEqualTo("measured");
    assertThat(answer.has("readingId")).isFalse();
    assertThat(rig.get("/readings").body().path("readings").size()).isZero();
    assertThat(rig.get("/photos").body().path("photos").size()).isZero();
  }

  @Test
  void takesThePhotographsOutOfAReadingThatAreTakenBack() {
    RigClient rig = RigClient.described(http, "photo-back");
    PhotoClient client = new PhotoClient(http, rig);
    Map<String, byte[]> two = new LinkedHashMap<>();
    two.put("a.jpg", file("IMG_0101.JPG"));
    two.put("b.jpg", file("IMG_0102.JPG"));
    JsonNode answers = client.send("", two);
    long photoId = answers.get(1).path("photoId").asLong();
    rig.postJson("/photos/" + photoId + "/withdraw", "{\"reason\": \"a bird before the disc\"}");

    JsonNode readings = rig.get("/readings").body().path("readings");
    assertThat(readings.size()).isEqualTo(1);
    assertThat(readings.get(0).path("framesPx").size()).isEqualTo(1);
    JsonNode again = client.send("", "b.jpg", file("IMG_0102.JPG"));
    assertThat(again.path("refusal").asString()).isEqualTo("taken-back");
    JsonNode anew = client.send("?supersede=true", "b.jpg", file("IMG_0102.JPG"));
    assertThat(anew.path("outcome").asString()).isEqualTo("measured");
    assertThat(rig.get("/readings").body().path("readings").get(0).path("framesPx").size())
        .isEqualTo(2);
  }

  private static byte[] file(String name) {
    return Objects.requireNonNull(NIGHT.get(name));
  }

  private static Map<String, byte[]> night() {
    Map<String, byte[]> files = new LinkedHashMap<>();
    String[] visits = {"21:10", "22:30", "23:50"};
    int[] denominators = {125, 250, 500};
    for (int visit = 0; visit < 3; visit++) {
      for (int frame = 0; frame < 3; frame++) {
        files.put(
            "IMG_0%d0%d.JPG".formatted(visit + 1, frame + 1),
            frame(
                DIAMETERS_PX[visit],
                3 * visit + frame,
                "2026:05:29 %s:%02d".formatted(visits[visit], 2 * frame),
                1,
                denominators[frame]));
      }
    }
    return files;
  }

  private static byte[] frame(
      double diameterPx, int shift, String takenAt, int numerator, int denominator) {
    MoonScene scene = RenderedMoon.scene(diameterPx, SEED);
    scene.centreX += 0.37 * shift; // the same Moon on other pixels
    scene.centreY -= 0.21 * shift;
    scene.exposure = Math.min(0.8, 0.6 * 250.0 * numerator / denominator);
    ExifBlock exif =
        new ExifBlock()
            .camera("Invented", "Garden camera")
            .takenAt(takenAt)
            .offset("+02:00")
            .focalLengthMm(400)
            .exposure(numerator, denominator)
            .iso(200)
            .fNumber(8);
    return RenderedMoon.jpeg(scene, exif);
  }
}

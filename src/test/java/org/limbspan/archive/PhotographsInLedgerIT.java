package org.limbspan.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.limbspan.photo.ExifBlock;
import org.limbspan.photo.PhotoClient;
import org.limbspan.photo.RenderedMoon;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Photographs go with their ledger: what was measured always, the files if asked for. */
@LimbspanIT
class PhotographsInLedgerIT {

  private static final String WITH_FILES = "?photographs=true";
  private static final String LIST = "original.csv";
  private static final String ENTERED = "\"enteredAt\":\"[^\"]*\",";

  /** Three frames of an invented minute and one of another. */
  private static final Map<String, byte[]> FRAMES = frames();

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
  void takesTheFilesAlongAndGoesOutAgainInTheSameBytes() throws Exception {
    RigClient rig = photographed("travel-whole");
    byte[] ledger = LedgerZip.of(http, rig.slug(), WITH_FILES);
    HttpResponse<String> answer = other.take(ledger);
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
    assertThat(answer.body()).contains("\"originals\":4").contains("\"photo_reading\":3");

    RigClient there = new RigClient(other.http(), rig.slug());
    assertThat(facts(there, "/readings", "readings"))
        .isEqualTo(facts(rig, "/readings", "readings"));
    assertThat(facts(there, "/photos", "photos")).isEqualTo(facts(rig, "/photos", "photos"));
    for (JsonNode photo : there.get("/photos").body().path("photos")) {
      String name = photo.path("file").asString();
      assertThat(bytes(other.http(), photo.path("original").asString()))
          .isEqualTo(FRAMES.get(name));
    }
    assertThat(LedgerZip.of(other.http(), rig.slug(), WITH_FILES)).isEqualTo(ledger);
    assertThat(left()).isEmpty();
  }

  @Test
  void remakesTheReadingThereWhenAFrameIsTakenBack() throws Exception {
    RigClient rig = photographed("travel-on");
    assertThat(other.take(LedgerZip.of(http, rig.slug(), WITH_FILES)).statusCode()).isEqualTo(201);
    RigClient there = new RigClient(other.http(), rig.slug());
    for (RigClient each : List.of(rig, there)) {
      String id = photo(each, "IMG_2.JPG").path("id").asString();
      assertThat(each.postJson("/photos/" + id + "/withdraw", "{\"reason\": \"haze\"}").status())
          .isEqualTo(204);
    }
    // entered at another moment, and the same in all else
    assertThat(facts(there, "/readings", "readings").replaceAll(ENTERED, ""))
        .isEqualTo(facts(rig, "/readings", "readings").replaceAll(ENTERED, ""));
    assertThat(there.get("/readings").body().path("readings").get(0).path("framesPx").size())
        .isEqualTo(2);
  }

  @Test
  void leavesTheFilesAtHomeUnlessAskedAndSaysSo() throws Exception {
    RigClient rig = photographed("travel-light");
    byte[] ledger = LedgerZip.of(http, rig.slug(), "");
    assertThat(LedgerZip.files(ledger).keySet())
        .contains("photo.csv", "photo_measurement.csv", "photo_reading.csv")
        .doesNotContain(LIST)
        .noneMatch(name -> name.startsWith("originals/"));
    // the frames of this rig are its own: those of the other tests are held there
    assertThat(other.take(ledger).statusCode()).isEqualTo(201);
    RigClient there = new RigClient(other.http(), rig.slug());
    assertThat(facts(there, "/readings", "readings"))
        .isEqualTo(facts(rig, "/readings", "readings"));
    JsonNode photo = photo(there, "IMG_1.JPG");
    assertThat(photo.path("originalHeld").asBoolean(true)).isFalse();
    for (String part : new String[] {"original", "image"}) {
      assertThat(there.getAt(photo.path(part).asString()).status()).isEqualTo(404);
    }
    String page = page(there, photo.path("id").asString());
    assertThat(page).contains("file is not held here").doesNotContain("/image");
    assertThat(LedgerZip.of(other.http(), rig.slug(), "")).isEqualTo(ledger);
    // with files asked for, and none held, the list is there and empty
    byte[] none = LedgerZip.of(other.http(), rig.slug(), WITH_FILES);
    assertThat(LedgerZip.texts(none)).containsEntry(LIST, "path,byte_count,sha256\n");

    JsonNode again =
        new PhotoClient(other.http(), there).send("", "IMG_1.JPG", file(rig, "IMG_1.JPG"));
    assertThat(again.path("alreadyHeld").asBoolean()).isTrue();
    assertThat(photo(there, "IMG_1.JPG").path("originalHeld").asBoolean()).isTrue();
  }

  @Test
  void takesALedgerOfTheFirstLayout() throws Exception {
    RigClient rig = RigClient.described(http, "travel-older");
    Map<String, byte[]> files = LedgerZip.files(LedgerZip.of(http, rig.slug(), ""));
    files.keySet().removeIf(name -> name.startsWith("photo"));
    files.computeIfPresent(
        "datapackage.json",
        (name, json) ->
            new String(json, StandardCharsets.UTF_8)
                .replace("\"limbspanLayout\" : 2", "\"limbspanLayout\" : 1")
                .replaceAll("\"path\" : \"photo[a-z_]*\\.csv\"", "\"path\" : \"rig.csv\"")
                .replaceAll(
                    "(?s)(\"path\" : \"rig.csv\".*?\"hash\" : \")[^\"]*",
                    "$1" + "sha256:" + LedgerZip.sha256(LedgerZip.file(files, "rig.csv")))
                .getBytes(StandardCharsets.UTF_8));
    HttpResponse<String> answer = other.take(LedgerZip.zip(files));
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
    assertThat(answer.body()).doesNotContain("photo");
  }

  @Test
  void takesNothingOfALedgerWhoseFilesAreNotTheDescribedOnes() throws Exception {
    RigClient rig = photographed("travel-spoilt");
    byte[] ledger = LedgerZip.of(http, rig.slug(), WITH_FILES);
    Map<String, byte[]> files = LedgerZip.files(ledger);
    String first =
        files.keySet().stream().filter(n -> n.startsWith("originals/")).findFirst().orElseThrow();

    Map<String, byte[]> spoilt = new LinkedHashMap<>(files);
    byte[] bytes = LedgerZip.file(files, first).clone();
    bytes[bytes.length / 2] ^= 1;
    spoilt.put(first, bytes);
    refuses(LedgerZip.zip(spoilt), 422, first);

    Map<String, byte[]> lost = new LinkedHashMap<>(files);
    lost.remove(first);
    refuses(LedgerZip.zip(lost), 413, first);

    Map<String, byte[]> longer = new LinkedHashMap<>(files);
    longer.put(first, new byte[bytes.length + 1]);
    refuses(LedgerZip.zip(longer), 413, first);

    String hash = LedgerZip.sha256(LedgerZip.file(FRAMES, "IMG_4.JPG"));
    refuses(
        list(ledger, line -> line + "originals/../../escaped.jpg,10," + hash + "\n"),
        422,
        "escaped");
    refuses(list(ledger, line -> line + "/etc/passwd,10," + hash + "\n"), 422, "/etc/passwd");
    refuses(
        list(ledger, line -> line + line.lines().skip(1).findFirst().orElseThrow() + "\n"),
        422,
        "order");
    refuses(
        list(ledger, line -> line.replaceFirst(",[0-9]+,", ",999999999999,")), 413, "longer than");
    refuses(list(ledger, line -> line.replaceFirst(",[0-9]+,", ",-1,")), 422, "a length");
    refuses(list(ledger, line -> "\"" + line), 422, "original.csv");
    refuses(
        LedgerZip.changed(
            ledger, "photo.csv", text -> text.replace("IMG_1.JPG", "../IMG_1.JPG"), true),
        422,
        "photo.csv: file_name");
    refuses(
        LedgerZip.changed(
            ledger,
            "photo_reading.csv",
            text -> text.replaceAll("[0-9a-f]{64}:1", "0".repeat(64) + ":1"),
            true),
        422,
        "no photograph");
    refuses(
        LedgerZip.changed(
            ledger, "photo_reading.csv", text -> text.replace("horizontal", "slanted"), true),
        422,
        "photo_reading.csv: axis");
    refuses(
        LedgerZip.changed(
            ledger, "photo_measurement.csv", text -> text.replace("centreX", "center"), true),
        422,
        "photo_measurement.csv: document");
    // one byte more than the row says, under its own hash
    refuses(
        LedgerZip.changed(
            ledger, "photo.csv", text -> text.replaceAll("jpeg,[0-9]+,", "jpeg,12,"), true),
        422,
        "photo.csv names");
  }

  @Test
  void refusesAZipMadeToFillDiskOrMemory() throws Exception {
    RigClient rig = photographed("travel-bomb");
    byte[] ledger = LedgerZip.of(http, rig.slug(), WITH_FILES);
    Map<String, byte[]> files = LedgerZip.files(ledger);
    byte[] zeros = new byte[20_000_000];
    files.put("originals/" + LedgerZip.sha256(zeros) + ".jpg", zeros);
    byte[] before = LedgerZip.file(files, LIST);
    String line = "originals/%1$s.jpg,%2$d,%1$s".formatted(LedgerZip.sha256(zeros), zeros.length);
    List<String> lines =
        new ArrayList<>(new String(before, StandardCharsets.UTF_8).lines().skip(1).toList());
    lines.add(line);
    lines.sort(null);
    byte[] after =
        ("path,byte_count,sha256\n" + String.join("\n", lines) + "\n")
            .getBytes(StandardCharsets.UTF_8);
    files.put(LIST, after);
    files.computeIfPresent(
        "datapackage.json",
        (name, json) ->
            new String(json, StandardCharsets.UTF_8)
                .replace(LedgerZip.sha256(before), LedgerZip.sha256(after))
                .getBytes(StandardCharsets.UTF_8));
    refuses(LedgerZip.zip(files), 413, "longer than");
  }

  private void refuses(byte[] ledger, int status, String words) throws Exception {
    HttpResponse<String> answer = other.take(ledger);
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
    assertThat(answer.body()).contains(words);
    String slug =
        LedgerZip.texts(ledger)
            .getOrDefault("rig.csv", "")
            .lines()
            .skip(1)
            .findFirst()
            .orElseThrow()
            .split(",", 2)[0];
    assertThat(new RigClient(other.http(), slug).get("").status()).isEqualTo(404);
    assertThat(left()).isEmpty();
  }

  /** What lies about in the home of the other installation. */
  private static List<Path> left() throws IOException {
    List<Path> left = new ArrayList<>();
    for (String folder : List.of("incoming", "photos/incoming")) {
      Path path = other.home().resolve(folder);
      if (Files.isDirectory(path)) {
        try (Stream<Path> files = Files.list(path)) {
          left.addAll(files.toList());
        }
      }
    }
    return left;
  }

  private static byte[] list(byte[] ledger, java.util.function.UnaryOperator<String> change)
      throws IOException {
    return LedgerZip.changed(ledger, LIST, change, true);
  }

  /** Four frames in three readings' rows: one was made of two frames first. */
  private RigClient photographed(String slug) {
    RigClient rig = RigClient.described(http, slug);
    PhotoClient camera = new PhotoClient(http, rig);
    List<String> names = List.of("IMG_1.JPG", "IMG_2.JPG");
    Map<String, byte[]> first = new LinkedHashMap<>();
    names.forEach(name -> first.put(name, file(rig, name)));
    camera.send("", first);
    camera.send("", "IMG_3.JPG", file(rig, "IMG_3.JPG"));
    camera.send("", "IMG_4.JPG", file(rig, "IMG_4.JPG"));
    return rig;
  }

  private static byte[] file(RigClient rig, String name) {
    return LedgerZip.file(rig.slug().equals("travel-light") ? LIGHT : FRAMES, name);
  }

  private static final Map<String, byte[]> LIGHT = frames(200);

  private static Map<String, byte[]> frames() {
    return frames(100);
  }

  private static Map<String, byte[]> frames(long seed) {
    Map<String, byte[]> frames = new LinkedHashMap<>();
    String[] seconds = {"21:10:00", "21:10:02", "21:10:04", "23:40:00"};
    for (int i = 0; i < seconds.length; i++) {
      frames.put(
          "IMG_" + (i + 1) + ".JPG",
          RenderedMoon.jpeg(
              RenderedMoon.scene(420, seed + i),
              ExifBlock.usual("2026:05:29 " + seconds[i]).offset("+02:00")));
    }
    return frames;
  }

  private static JsonNode photo(RigClient rig, String name) {
    for (JsonNode photo : rig.get("/photos").body().path("photos")) {
      if (photo.path("file").asString().equals(name)) {
        return photo;
      }
    }
    throw new AssertionError("no " + name);
  }

  /** Without what is numbered anew in every installation. */
  private static String facts(RigClient rig, String path, String list) {
    JsonNode all = rig.get(path).body().path(list);
    for (JsonNode each : all) {
      for (String numbered : List.of("id", "readingId", "image", "overlay", "original")) {
        ((ObjectNode) each).remove(numbered);
      }
    }
    return all.toString();
  }

  private String page(RigClient rig, String photoId) {
    for (JsonNode reading : rig.get("/readings").body().path("readings")) {
      String id = reading.path("id").asString();
      if (rig.get("/photos?readingId=" + id)
          .body()
          .toString()
          .contains("\"id\":" + photoId + ",")) {
        return new String(
            bytes(other.http(), "/rigs/" + rig.slug() + "/readings/" + id), StandardCharsets.UTF_8);
      }
    }
    throw new AssertionError("no reading of " + photoId);
  }

  private static byte[] bytes(RestTestClient client, String path) {
    return client
        .get()
        .uri(path)
        .exchange()
        .expectStatus()
        .isOk()
        .expectBody()
        .returnResult()
        .getResponseBodyContent();
  }
}

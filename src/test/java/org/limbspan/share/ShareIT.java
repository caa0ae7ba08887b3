package org.limbspan.share;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.limbspan.demo.Demo;
import org.limbspan.platform.Sha256;
import org.limbspan.testing.Judged;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A package goes out, and comes back as a guest: whole, checked, and removable. */
@LimbspanIT
class ShareIT {

  private static final JsonMapper MAPPER = new JsonMapper();
  private static final MediaType ZIP = MediaType.parseMediaType("application/zip");

  @Autowired private RestTestClient http;
  @Autowired private Demo demo;

  @Test
  void comesBackAsAGuestWithTheSameFigures() throws IOException {
    RigClient rig = demo();
    Judged.get(rig, "/conclusions");
    byte[] zip = share(rig, "CC-BY-4.0", "0.5");

    JsonNode guest = load(zip, 201);
    JsonNode again = load(zip, 201);
    assertThat(again.path("id")).isEqualTo(guest.path("id"));
    assertThat(guest.path("positionDeg").asDouble()).isEqualTo(0.5);
    assertThat(guest.path("latitudeDeg").asDouble()).isEqualTo(46.5);
    assertThat(guest.path("licence").asString()).isEqualTo("CC-BY-4.0");

    JsonNode comparison = rig.get("/comparison").body();
    JsonNode own = comparison.path("rigs").get(0);
    JsonNode other = find(comparison.path("rigs"), guest.path("id").asLong());
    assertThat(other.path("readingCount").asInt()).isEqualTo(own.path("readingCount").asInt());
    assertThat(other.path("nightRatio").path("value").asDouble())
        .isCloseTo(
            own.path("nightRatio").path("value").asDouble(),
            org.assertj.core.api.Assertions.within(
                3 * own.path("nightRatio").path("uncertainty").asDouble()));
    assertThat(rig.getAt("/api/guests").body().toString()).contains("0.5");

    http.delete()
        .uri("/api/guests/" + guest.path("id").asLong())
        .exchange()
        .expectStatus()
        .isNoContent();
    assertThat(status("/api/guests/" + guest.path("id").asLong())).isEqualTo(404);
  }

  @Test
  void namesFileLineAndColumnOfWhatIsWrong() throws IOException {
    Map<String, byte[]> files = unzipped(share(demo(), "CC0-1.0", "0.1"));
    String csv = new String(file(files, "readings.csv"), StandardCharsets.UTF_8);
    String[] lines = csv.split("\n");
    lines[3] = lines[3].replaceFirst("horizontal,[^,]*,", "sideways,-3,");
    JsonNode problem = load(zipped(resealed(files, String.join("\n", lines) + "\n")), 422);
    assertThat(problem.path("violations")).hasSize(2);
    assertThat(problem.path("violations").get(0).path("field").asString())
        .isEqualTo("readings.csv: axis");
    assertThat(problem.path("violations").get(0).path("line").asInt()).isEqualTo(4);
    assertThat(problem.path("violations").get(1).path("field").asString())
        .isEqualTo("readings.csv: diameter_arcmin");
  }

  @Test
  void refusesWhatItsChecksumDoesNotTellAndWhatIsNoPackage() throws IOException {
    Map<String, byte[]> files = unzipped(share(demo(), "CC0-1.0", "0.1"));
    files.put("rig.json", "{\"slug\": \"other\"}".getBytes(StandardCharsets.UTF_8));
    JsonNode problem = load(zipped(files), 422);
    assertThat(problem.path("violations").get(0).path("field").asString()).isEqualTo("rig.json");
    assertThat(load("no zip".getBytes(StandardCharsets.UTF_8), 422).toString())
        .contains("share.zip");
  }

  @Test
  void asksForALicence() {
    RigClient rig = demo();
    assertThat(rig.get("/share.zip").body().path("violations").get(0).path("expected").asString())
        .contains("CC-BY-4.0");
    assertThat(rig.get("/share.zip?licence=CC0-1.0&positionDeg=11").status()).isEqualTo(400);
  }

  private RigClient demo() {
    return new RigClient(http, demo.enter().slug());
  }

  private int status(String path) {
    return http.delete().uri(path).exchange().expectBody().returnResult().getStatus().value();
  }

  private byte[] share(RigClient rig, String licence, String positionDeg) {
    return http.get()
        .uri(
            "/api/rigs/%s/share.zip?licence=%s&positionDeg=%s"
                .formatted(rig.slug(), licence, positionDeg))
        .exchange()
        .expectStatus()
        .isOk()
        .expectBody()
        .returnResult()
        .getResponseBodyContent();
  }

  private JsonNode load(byte[] zip, int status) {
    var result =
        http.post()
            .uri("/api/guests")
            .contentType(ZIP)
            .body(zip)
            .exchange()
            .expectBody()
            .returnResult();
    assertThat(result.getStatus().value()).isEqualTo(status);
    return MAPPER.readTree(result.getResponseBodyContent());
  }

  private static JsonNode find(JsonNode rigs, long guestId) {
    for (JsonNode each : rigs) {
      if (each.path("guestId").asLong(-1) == guestId) {
        return each;
      }
    }
    throw new AssertionError("no guest " + guestId + " in " + rigs);
  }

  private static byte[] file(Map<String, byte[]> files, String name) {
    return files.getOrDefault(name, new byte[0]);
  }

  /** With these readings and the checksum that belongs to them. */
  private static Map<String, byte[]> resealed(Map<String, byte[]> files, String csv) {
    byte[] bytes = csv.getBytes(StandardCharsets.UTF_8);
    String before = HexFormat.of().formatHex(Sha256.of(file(files, "readings.csv")));
    String description = new String(file(files, "datapackage.json"), StandardCharsets.UTF_8);
    files.put("readings.csv", bytes);
    files.put(
        "datapackage.json",
        description
            .replace(before, HexFormat.of().formatHex(Sha256.of(bytes)))
            .getBytes(StandardCharsets.UTF_8));
    return files;
  }

  private static Map<String, byte[]> unzipped(byte[] zip) throws IOException {
    Map<String, byte[]> files = new LinkedHashMap<>();
    try (ZipInputStream input = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry entry = input.getNextEntry(); entry != null; entry = input.getNextEntry()) {
        files.put(entry.getName(), input.readAllBytes());
      }
    }
    return files;
  }

  private static byte[] zipped(Map<String, byte[]> files) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        zip.putNextEntry(new ZipEntry(file.getKey()));
        zip.write(file.getValue());
        zip.closeEntry();
      }
    }
    return bytes.toByteArray();
  }
}

package org.limbspan.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.Judged;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/**
 * The photographs of an independent renderer, over HTTP, from the file to the answer: see the
 * README of {@code reference/photos}. Within 0.08 percent of the truth, an over-exposed one within
 * three of its own standard uncertainties.
 */
@LimbspanIT
class PhotoReferenceIT {

  private static final String FOLDER = "/reference/photos/";

  /** By the reason that the truth gives. */
  private static final Map<String, String> REFUSALS =
      Map.of(
          "no Moon: street lamp",
          "no-moon",
          "crescent too thin (2 %)",
          "crescent-too-thin",
          "EXIF has no time",
          "no-time");

  @Autowired private RestTestClient http;

  @Test
  void measuresAndRefusesAsTheTruthHasIt() throws IOException {
    Map<String, RigClient> rigs = new TreeMap<>();
    for (Map<String, String> truth : truth()) {
      // a rig for each camera of the set: they differ in focal length
      RigClient rig = rig(text(truth, "rig"));
      rigs.put(rig.slug(), rig);
      String file = text(truth, "file");
      JsonNode answer = new PhotoClient(http, rig).send("", file, bytes(file));
      String reason = text(truth, "refuse_reason");
      if (reason.isEmpty()) {
        agrees(answer, "horizontal", truth, "true_h_px");
        agrees(answer, "vertical", truth, "true_v_px");
        assertThat(answer.path("takenAt").asString()).isEqualTo(text(truth, "time_utc"));
      } else {
        assertThat(answer.path("refusal").asString()).as(file).isEqualTo(REFUSALS.get(reason));
      }
    }
    // few as their readings are, each rig is judged
    rigs.values().forEach(rig -> Judged.get(rig, "/hypotheses"));
  }

  private static void agrees(
      JsonNode answer, String axis, Map<String, String> truth, String column) {
    String file = text(truth, "file");
    assertThat(answer.path("outcome").asString()).as(answer.toString()).isEqualTo("measured");
    double expected = Double.parseDouble(text(truth, column));
    double allowed =
        text(truth, "kind").startsWith("overexp")
            ? 3 * answer.path(axis + "UncertaintyPx").asDouble()
            : 0.0008 * expected;
    assertThat(answer.path(axis + "Px").asDouble())
        .as(file + " " + axis)
        .isCloseTo(expected, within(allowed));
  }

  private RigClient rig(String camera) {
    String slug = "reference-" + camera.toLowerCase(Locale.ROOT);
    return http.get().uri("/api/rigs/" + slug).exchange().returnResult().getStatus().value() == 200
        ? new RigClient(http, slug)
        : RigClient.described(http, slug);
  }

  private static List<Map<String, String>> truth() throws IOException {
    List<String> lines = new String(bytes("truth.csv"), StandardCharsets.UTF_8).lines().toList();
    List<String> names = List.of(lines.get(0).split(",", -1));
    return lines.stream()
        .skip(1)
        .map(
            line -> {
              List<String> values = List.of(line.split(",", -1));
              Map<String, String> row = new LinkedHashMap<>();
              for (int i = 0; i < names.size(); i++) {
                row.put(names.get(i), values.get(i));
              }
              return row;
            })
        .toList();
  }

  private static String text(Map<String, String> row, String column) {
    return Objects.requireNonNull(row.get(column), column);
  }

  private static byte[] bytes(String file) throws IOException {
    try (InputStream in = PhotoReferenceIT.class.getResourceAsStream(FOLDER + file)) {
      return Objects.requireNonNull(in, file).readAllBytes();
    }
  }
}

package org.limbspan.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.springframework.core.io.ClassPathResource;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * A simulated rig with known truth, written by an independent simulator; see the README of {@code
 * reference/readings}.
 */
public record ReferenceFolder(String name) {

  private static final JsonMapper MAPPER = new JsonMapper();

  /** Every folder. */
  public static Stream<String> names() {
    return Stream.of(
        "calibration-at-49m",
        "clean-hourly",
        "clean-pairs",
        "clean-triples-3y",
        "declared-change",
        "drift-0.1",
        "local-time-as-utc",
        "near-moon-world",
        "scatter-x3",
        "sent-twice",
        "step-0.5",
        "step-minus-1",
        "vertical-as-horizontal");
  }

  /** Describes the rig under a slug and enters its setups and calibrations, not the readings. */
  public RigClient describe(RestTestClient http, String slug) {
    ObjectNode rig = (ObjectNode) MAPPER.readTree(text("rig.json"));
    rig.put("slug", slug);
    RigClient client = new RigClient(http, slug);
    require(client.describe(rig.toString()));
    for (JsonNode setup : MAPPER.readTree(text("setups.json"))) {
      require(client.postJson("/setups", setup.toString()));
    }
    require(client.postCsv("/calibrations", text("calibrations.csv")));
    return client;
  }

  /** The lines of the readings' file, the header first. */
  public List<String> readingLines() {
    return text("readings.csv").lines().toList();
  }

  public String readings() {
    return text("readings.csv");
  }

  public JsonNode truth() {
    return MAPPER.readTree(text("truth.json"));
  }

  private String text(String file) {
    try {
      return new ClassPathResource("reference/readings/" + name + "/" + file)
          .getContentAsString(StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void require(Answer answer) {
    if (answer.status() != 201) {
      throw new AssertionError("not entered: " + answer);
    }
  }
}

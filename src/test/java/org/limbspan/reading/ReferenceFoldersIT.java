package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.ReferenceFolder;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/**
 * The simulated rigs over HTTP: what is stored, and what is computed beside it, against their
 * truth. The simulator's diameters are geometric along the horizontal axis, without the uniform
 * contraction by refraction of up to 0.03 percent, as are ours.
 */
@LimbspanIT
class ReferenceFoldersIT {

  /** Of the diameter; asked for by the plan, a seventh of a single frame's noise. */
  private static final Percentage DIAMETER = Percentage.withPercentage(0.02);

  /** Asked for by the plan; the simulator bends light by the night's own air, we by mean air. */
  private static final double ALTITUDE_DEG = 0.02;

  @Autowired private RestTestClient http;

  @ParameterizedTest
  @MethodSource("org.limbspan.testing.ReferenceFolder#names")
  void storesEachReadingOnceAndPredictsTheMoonOfItsInstant(String name) {
    ReferenceFolder folder = new ReferenceFolder(name);
    JsonNode truth = folder.truth();
    int lines = truth.path("readings").path("row").size();
    int unique = truth.path("uniqueReadings").asInt();
    RigClient rig = folder.describe(http, "reference-" + name.replace('.', '-'));

    Answer answer = rig.postCsv("/readings", folder.readings());
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.body().path("received").asInt()).isEqualTo(lines);
    assertThat(answer.body().path("stored").asInt()).isEqualTo(unique);
    assertThat(answer.body().path("alreadyHeld").asInt()).isEqualTo(lines - unique);

    Map<Instant, JsonNode> held = readings(rig);
    assertThat(held).hasSize(unique);
    compare(folder, held);
  }

  @Test
  void holdsTheCalibrationsToTheTrueScale() {
    ReferenceFolder folder = new ReferenceFolder("clean-pairs");
    RigClient rig = folder.describe(http, "reference-scale");
    JsonNode setup = rig.get("/setups").body().get(1);
    double scale = setup.path("plateScaleArcsecPerPx").asDouble();
    double uncertainty = setup.path("plateScaleUncertaintyArcsecPerPx").asDouble();
    double trueScale = folder.truth().path("trueScaleArcsecPerPx").asDouble();
    assertThat(Math.abs(scale - trueScale)).isLessThan(2 * uncertainty);
    assertThat(uncertainty / scale).isBetween(5e-4, 1e-3);
    assertThat(setup.path("calibrationCount").asInt()).isEqualTo(10);
    assertThat(setup.path("agreementProbability").asDouble()).isBetween(0.001, 0.999);
  }

  @Test
  void calibrationsTellTheSheetThatStoodAtFortyNineMetres() {
    RigClient rig =
        new ReferenceFolder("calibration-at-49m").describe(http, "reference-sheet-at-49-m");
    JsonNode setup = rig.get("/setups").body().get(1);
    assertThat(setup.path("birgeRatio").asDouble()).isGreaterThan(3);
    assertThat(setup.path("agreementProbability").asDouble()).isLessThan(1e-9);
  }

  private static void compare(ReferenceFolder folder, Map<Instant, JsonNode> held) {
    JsonNode truth = folder.truth().path("readings");
    List<String> lines = folder.readingLines();
    int compared = 0;
    for (int row = 0; row < truth.path("row").size(); row++) {
      String[] cells = lines.get(row + 1).split(",", -1);
      Instant takenAt = OffsetDateTime.parse(cells[0]).toInstant();
      JsonNode reading = Objects.requireNonNull(held.get(takenAt), "row " + row);
      assertThat(reading.path("axis").asString()).isEqualTo(cells[1]);
      assertThat(reading.path("diameterPx").asDouble()).isEqualTo(Double.parseDouble(cells[2]));
      Instant trueInstant = Instant.parse(truth.path("trueTakenAt").get(row).asString());
      if (trueInstant.equals(takenAt)) {
        comparePrediction(reading, truth, row);
        compared++;
      }
    }
    assertThat(compared).as("rows with the right time").isGreaterThan(50);
  }

  private static void comparePrediction(JsonNode reading, JsonNode truth, int row) {
    JsonNode predicted = reading.path("predicted");
    double trueArcmin = truth.path("topocentricDiameterArcsec").get(row).asDouble() / 60;
    double distanceKm = predicted.path("topocentricDistanceKm").asDouble();
    double geometricArcmin = Math.toDegrees(2 * Math.asin(1737.4 / distanceKm)) * 60;
    assertThat(geometricArcmin).as("diameter, row " + row).isCloseTo(trueArcmin, DIAMETER);
    if (reading.path("axis").asString().equals("horizontal")) {
      assertThat(predicted.path("diameterArcmin").asDouble()).isCloseTo(trueArcmin, DIAMETER);
    }
    assertThat(predicted.path("geocentricDistanceKm").asDouble())
        .isCloseTo(truth.path("geocentricKm").get(row).asDouble(), within(1.0));
    assertThat(predicted.path("apparentAltitudeDeg").asDouble())
        .as("altitude, row " + row)
        .isCloseTo(truth.path("apparentAltitudeDeg").get(row).asDouble(), within(ALTITUDE_DEG));
  }

  private static Map<Instant, JsonNode> readings(RigClient rig) {
    Map<Instant, JsonNode> byInstant = new HashMap<>();
    List<JsonNode> all = new ArrayList<>();
    rig.get("/readings?limit=5000").body().path("readings").forEach(all::add);
    all.forEach(each -> byInstant.put(Instant.parse(each.path("takenAt").asString()), each));
    assertThat(byInstant).hasSameSizeAs(all);
    return byInstant;
  }
}

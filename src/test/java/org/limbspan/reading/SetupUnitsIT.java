package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** One unit of length in one setup, whichever way the facts come. */
@LimbspanIT
class SetupUnitsIT {

  private static final String SHEET_MM =
      """
      {"takenAt": "2026-01-10T12:00:00Z", "method": "target", "targetLengthMm": 297,
       "targetLengthUncertaintyMm": 0.15, "targetDistanceM": 50, "targetDistanceUncertaintyM": 0.02,
       "measuredMm": 74.25, "measuredUncertaintyMm": 0.3}""";

  private static final String SHEET_PX =
      SHEET_MM
          .replace("measuredMm\": 74.25", "measuredPx\": 1100")
          .replace("measuredUncertaintyMm\": 0.3", "measuredUncertaintyPx\": 1.1")
          .replace("2026-01-10", "2026-01-11");

  @Autowired private RestTestClient http;

  @Test
  void measuresWithARulerOnAScreen() {
    RigClient rig = RigClient.described(http, "units-ruler");
    Answer calibration = rig.postJson("/calibrations", SHEET_MM);
    // By hand, see CalibrationTest: 16.501135 arcsec/mm.
    assertThat(calibration.body().path("plateScaleArcsecPerMm").asDouble())
        .isCloseTo(16.501135, within(2e-6));
    Answer answer =
        rig.postCsv(
            "/readings",
            """
            taken_at,axis,diameter_mm,uncertainty_mm
            2026-02-01T21:14:00Z,horizontal,117.5,0.4
            """);
    assertThat(answer.body().path("stored").asInt()).isEqualTo(1);
    JsonNode reading = rig.get("/readings").body().path("readings").get(0);
    assertThat(reading.path("diameterMm").asDouble()).isEqualTo(117.5);
    assertThat(reading.path("diameterArcmin").asDouble()).isCloseTo(32.3147, within(1e-4));
  }

  @Test
  void refusesReadingsInAnotherUnitThanTheCalibration() {
    RigClient rig = RigClient.described(http, "units-reading");
    rig.postJson("/calibrations", SHEET_MM);
    Answer refused = rig.postJson("/readings", reading("2026-02-01", "Px"));
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.violation("diameterPx").path("expected").asString())
        .isEqualTo("a length in mm, the unit of setup 0");
    assertThat(refused.violation("diameterPx").path("expectedOnPages").asString())
        .isEqualTo("a length in mm, the unit of setup 1");
    assertThat(rig.postJson("/readings", reading("2026-02-01", "Mm")).status()).isEqualTo(200);
  }

  @Test
  void refusesACalibrationInAnotherUnitThanTheReadings() {
    RigClient rig = RigClient.described(http, "units-calibration");
    rig.postJson("/readings", reading("2026-02-01", "Px"));
    Answer refused = rig.postJson("/calibrations", SHEET_MM);
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.violation("measuredMm").path("expected").asString())
        .contains("px, the unit of setup 0");
    assertThat(refused.violation("measuredMm").path("expectedOnPages").asString())
        .contains("px, the unit of setup 1");
    assertThat(rig.postJson("/calibrations", SHEET_PX).status()).isEqualTo(201);
    assertThat(rig.get("/calibrations").body().size()).isEqualTo(1);
  }

  @Test
  void refusesTwoUnitsInOneBatchOfCalibrations() {
    RigClient rig = RigClient.described(http, "units-batch");
    Answer refused = rig.postJson("/calibrations", "[" + SHEET_PX + "," + SHEET_MM + "]");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.violation("measuredMm").path("line").asInt()).isEqualTo(2);
    assertThat(rig.get("/calibrations").body().isEmpty()).isTrue();
  }

  @Test
  void takesTheUnitOfABatchFromItsEarliestReading() {
    RigClient rig = RigClient.described(http, "units-earliest");
    String batch = "[" + reading("2026-02-02", "Mm") + "," + reading("2026-02-01", "Px") + "]";
    assertThat(rig.postJson("/readings", batch).status()).isEqualTo(422);
    Answer kept = rig.postJson("/readings?keepGood=true", batch);
    assertThat(kept.body().path("stored").asInt()).isEqualTo(1);
    assertThat(kept.body().path("rejected").get(0).path("line").asInt()).isEqualTo(1);
  }

  @Test
  void allowsAnotherUnitInAnotherSetupAndKeepsThemApart() {
    RigClient rig = RigClient.described(http, "units-setups");
    rig.postJson("/readings", reading("2026-02-01", "Px"));
    Answer setup = rig.postJson("/setups", "{\"startedAt\": \"2026-02-02T00:00:00Z\"}");
    assertThat(rig.postJson("/readings", reading("2026-02-03", "Mm")).status()).isEqualTo(200);
    Answer refused =
        rig.postJson(
            "/setups/" + setup.body().path("id").asLong() + "/withdraw",
            "{\"reason\": \"nothing was touched\"}");
    assertThat(refused.status()).isEqualTo(409);
    assertThat(rig.get("/setups").body().size()).isEqualTo(2);
  }

  private static String reading(String day, String suffix) {
    return """
    {"takenAt": "%1$sT21:14:00Z", "axis": "horizontal", "diameter%2$s": 117.5,
     "uncertainty%2$s": 0.4}"""
        .formatted(day, suffix);
  }
}

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

/** The ledger as the contract has it, over HTTP. */
@LimbspanIT
class LedgerContractIT {

  private static final String SHEET =
      """
      {"takenAt": "2026-01-10T12:00:00Z", "method": "target", "targetLengthMm": 297,
       "targetLengthUncertaintyMm": 0.15, "targetDistanceM": 50, "targetDistanceUncertaintyM": 0.02,
       "measuredPx": 1100, "measuredUncertaintyPx": 1.1}""";

  @Autowired private RestTestClient http;

  @Test
  void describesARigWithOneSetupFromTheBeginning() {
    RigClient rig = RigClient.described(http, "contract-rig");
    JsonNode held = rig.get("").body();
    assertThat(held.path("slug").asString()).isEqualTo("contract-rig");
    assertThat(held.path("latitudeDeg").asDouble()).isEqualTo(48.2);
    assertThat(held.path("timeZone").asString()).isEqualTo("Europe/Vienna");
    assertThat(held.has("note")).isFalse();

    JsonNode setups = rig.get("/setups").body();
    assertThat(setups.size()).isEqualTo(1);
    assertThat(setups.get(0).path("number").asInt()).isZero();
    assertThat(setups.get(0).has("startedAt")).isFalse();
    assertThat(setups.get(0).has("endedAt")).isFalse();
  }

  @Test
  void takesACalibrationAndAnswersItsPlateScale() {
    RigClient rig = RigClient.described(http, "contract-calibration");
    Answer answer = rig.postJson("/calibrations", SHEET);
    assertThat(answer.status()).isEqualTo(201);
    // By hand, see CalibrationTest: 1.1138267 and 0.00132496 arcsec/px.
    assertThat(answer.body().path("plateScaleArcsecPerPx").asDouble())
        .isCloseTo(1.1138267, within(1e-7));
    assertThat(answer.body().path("plateScaleUncertaintyArcsecPerPx").asDouble())
        .isCloseTo(0.00132496, within(2e-8));
    assertThat(answer.body().path("setup").asInt()).isZero();

    Answer again = rig.postJson("/calibrations", "[" + SHEET + "]");
    assertThat(again.status()).isEqualTo(200);
    assertThat(again.body().get(0).path("outcome").asString()).isEqualTo("already-held");
    assertThat(rig.get("/calibrations").body().size()).isEqualTo(1);
  }

  @Test
  void setsAReadingBesideTheComputedMoon() {
    RigClient rig = RigClient.described(http, "contract-reading");
    rig.postJson("/calibrations", SHEET);
    Answer answer =
        rig.postJson(
            "/readings",
            """
            {"takenAt": "2026-02-01T22:14:00+01:00", "axis": "horizontal", "diameterPx": 1760.5,
             "uncertaintyPx": 1.6, "altitudeDeg": 50, "iso": 400, "note": "calm"}""");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.body().path("received").asInt()).isEqualTo(1);
    assertThat(answer.body().path("stored").asInt()).isEqualTo(1);
    assertThat(answer.body().path("alreadyHeld").asInt()).isZero();
    assertThat(answer.body().path("rejected").isEmpty()).isTrue();

    JsonNode page = rig.get("/readings").body();
    assertThat(page.has("next")).isFalse();
    JsonNode reading = page.path("readings").get(0);
    assertThat(reading.path("takenAt").asString()).isEqualTo("2026-02-01T21:14:00Z");
    assertThat(reading.path("diameterPx").asDouble()).isEqualTo(1760.5);
    double arcmin = 1760.5 * 1.1138267 / 60;
    assertThat(reading.path("diameterArcmin").asDouble()).isCloseTo(arcmin, within(1e-5));
    JsonNode predicted = reading.path("predicted");
    assertThat(predicted.propertyNames())
        .contains(
            "geocentricDistanceKm",
            "topocentricDistanceKm",
            "diameterArcmin",
            "altitudeDeg",
            "apparentAltitudeDeg",
            "azimuthDeg",
            "illuminatedFraction",
            "sunSeparationDeg",
            "daysFromPerigee");
    assertThat(reading.path("residualPercent").asDouble())
        .isCloseTo(
            100 * Math.log(arcmin / predicted.path("diameterArcmin").asDouble()), within(1e-4));
    // Reading 1.6 / 1760.5 = 9.0883e-4 and scale 1.18956e-3, in quadrature.
    assertThat(reading.path("residualUncertaintyPercent").asDouble())
        .isCloseTo(0.149702, within(1e-5));
  }

  @Test
  void readsTheHeaderOfTheContract() {
    RigClient rig = RigClient.described(http, "contract-csv");
    Answer answer =
        rig.postCsv(
            "/readings",
            """
            taken_at,axis,diameter_px,uncertainty_px,diameter_arcmin,uncertainty_arcmin,altitude_deg,azimuth_deg,exposure_s,iso,f_number,sky,note
            2026-02-01T21:14:00Z,horizontal,1760.5,1.6,,,50,120,0.004,400,11,clear,first
            2026-02-01T22:14:00Z,vertical,,,32.5,0.03,,,,,,,
            """);
    assertThat(answer.body().path("stored").asInt()).isEqualTo(2);
    JsonNode readings = rig.get("/readings").body().path("readings");
    assertThat(readings.get(0).path("sky").asString()).isEqualTo("clear");
    assertThat(readings.get(0).path("exposureS").asDouble()).isEqualTo(0.004);
    assertThat(readings.get(0).has("diameterArcmin")).isFalse();
    assertThat(readings.get(0).path("remarks").get(0).asString()).contains("no calibration");
    assertThat(readings.get(1).path("diameterArcmin").asDouble()).isEqualTo(32.5);
    assertThat(readings.get(1).has("note")).isFalse();
  }
}

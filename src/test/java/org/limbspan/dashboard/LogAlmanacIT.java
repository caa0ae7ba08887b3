package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** The table from which the log page computes by itself. */
@LimbspanIT
class LogAlmanacIT {

  @Autowired private RestTestClient http;

  @Test
  void holdsTheMoonAsTheApiComputesIt() {
    RigClient rig = RigClient.described(http, "almanac-rows");
    JsonNode table = table(rig, "?at=2026-03-04T20:00:00Z").body();
    int row = 100;
    Instant at =
        Instant.ofEpochSecond(table.path("fromS").asLong() + row * table.path("stepS").asLong());
    JsonNode sky = rig.getAt("/api/sky?rig=" + rig.slug() + "&at=" + at).body();
    for (String name : new String[] {"altitudeDeg", "apparentAltitudeDeg", "azimuthDeg"}) {
      assertThat(table.path(name).get(row).asDouble())
          .isCloseTo(sky.path(name).asDouble(), within(1e-5));
    }
    assertThat(table.path("horizontalArcmin").get(row).asDouble())
        .isCloseTo(sky.path("diameterArcmin").asDouble(), within(1e-5));
  }

  @Test
  void holdsTheReadingsOfThoseDaysWithTheirPass() {
    RigClient rig = RigClient.described(http, "almanac-held");
    rig.postCsv(
        "/readings",
        """
        taken_at,axis,diameter_arcmin,uncertainty_arcmin
        2026-03-04T20:00:00Z,horizontal,32.1,0.03
        2025-03-04T20:00:00Z,horizontal,32.1,0.03
        """);
    JsonNode table = table(rig, "?at=2026-03-04T20:00:00Z").body();
    assertThat(table.path("readings")).hasSize(1);
    JsonNode held = table.path("readings").get(0);
    long row = (held.path("atS").asLong() - table.path("fromS").asLong()) / 600;
    assertThat(held.path("pass")).isEqualTo(table.path("pass").get((int) row));
  }

  @Test
  void tellsThePlateScaleOfEachSetup() {
    RigClient rig = RigClient.described(http, "almanac-scale");
    rig.postJson("/setups", "{\"startedAt\": \"2026-02-01T00:00:00Z\"}");
    rig.postJson(
        "/calibrations",
        """
        {"takenAt": "2026-03-01T12:00:00Z", "method": "target", "targetLengthMm": 297,
         "targetLengthUncertaintyMm": 0.2, "targetDistanceM": 50, "targetDistanceUncertaintyM": 0.02,
         "measuredMm": 180, "measuredUncertaintyMm": 0.3}""");
    JsonNode setups = table(rig, "?at=2026-03-04T20:00:00Z").body().path("setups");
    assertThat(setups).hasSize(2);
    assertThat(setups.get(0).has("unit")).isFalse();
    assertThat(setups.get(1).path("unit").asString()).isEqualTo("mm");
    assertThat(setups.get(1).path("arcsecPerUnit").asDouble()).isCloseTo(6.807, within(0.001));
  }

  @Test
  void endsWithTheEphemeris() {
    RigClient rig = RigClient.described(http, "almanac-end");
    assertThat(table(rig, "?at=1801-01-01T00:00:00Z").status()).isEqualTo(400);
    assertThat(table(rig, "?at=1980-01-02T00:00:00Z").body().path("pass")).isNotEmpty();
  }

  private static Answer table(RigClient rig, String query) {
    return rig.getAt("/rigs/" + rig.slug() + "/log/almanac.json" + query);
  }
}

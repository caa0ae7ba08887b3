package org.limbspan.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.Judged;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** The second scenario from its mistakes to its good ending. */
@LimbspanIT
class TwoGardensIT {

  @Autowired private RestTestClient http;
  @Autowired private TwoGardens gardens;

  @Test
  void endWellAndTellTheMoonsDistanceTogether() {
    gardens.enter();
    RigClient north = new RigClient(http, TwoGardens.NORTH.slug());
    RigClient south = new RigClient(http, TwoGardens.SOUTH.slug());

    JsonNode northern = Judged.get(north, "/alerts").path("alerts");
    JsonNode southern = Judged.get(south, "/alerts").path("alerts");
    assertThat(words(northern, "kind")).as(northern.toString()).contains("scale-step");
    assertThat(words(northern, "kind")).contains("altitude-trend");
    assertThat(words(southern, "kind")).as(southern.toString()).contains("calibration-conflict");
    assertThat(words(northern, "state")).doesNotContain("raised");
    assertThat(words(southern, "state")).doesNotContain("raised");
    for (RigClient rig : List.of(north, south)) {
      assertThat(Judged.get(rig, "/cycle").path("swing").path("verdict").asString())
          .isEqualTo("agrees");
      assertThat(rig.getText("/readings", "text/csv").lines().skip(1))
          .isNotEmpty()
          .allMatch(line -> line.contains("invented"));
    }

    byte[] shared =
        http.get()
            .uri("/api/rigs/" + south.slug() + "/share.zip?licence=CC0-1.0&positionDeg=0.1")
            .exchange()
            .expectBody()
            .returnResult()
            .getResponseBodyContent();
    http.post()
        .uri("/api/guests")
        .contentType(MediaType.parseMediaType("application/zip"))
        .body(shared)
        .exchange()
        .expectStatus()
        .isCreated();
    JsonNode parallax = parallax(north, TwoGardens.SOUTH.description().name());
    double value = parallax.path("parallax").path("value").asDouble();
    double uncertainty = parallax.path("parallax").path("uncertainty").asDouble();
    assertThat(parallax.path("pairCount").asInt()).isGreaterThan(50);
    assertThat(uncertainty / value).isLessThan(0.1);
    // Mean distance 384,400 km in equatorial radii of 6378.137 km; over the pairs it may lie some
    // percent beside that.
    assertThat(Math.abs(value - 6378.137 / 384_400)).isLessThan(3 * uncertainty + 0.0005);
  }

  private static JsonNode parallax(RigClient rig, String guest) {
    for (JsonNode each : rig.get("/comparison").body().path("parallaxes")) {
      if (each.path("name").asString().equals(guest)) {
        return each;
      }
    }
    throw new AssertionError("no guest " + guest);
  }

  private static List<String> words(JsonNode alerts, String field) {
    List<String> words = new ArrayList<>();
    alerts.forEach(each -> words.add(each.path(field).asString()));
    return words;
  }
}

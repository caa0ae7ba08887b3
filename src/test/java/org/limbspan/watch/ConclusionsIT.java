package org.limbspan.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.demo.Demo;
import org.limbspan.rig.Rig;
import org.limbspan.testing.Judged;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** The two questions, answered from the demo's invented rig and from one without readings. */
@LimbspanIT
class ConclusionsIT {

  @Autowired private RestTestClient http;
  @Autowired private Demo demo;

  @Test
  void areTheFiguresOfTheOtherPages() {
    RigClient rig = demo();
    JsonNode cycle = Judged.get(rig, "/cycle");
    JsonNode nights = Judged.get(rig, "/nights").path("summary");

    JsonNode told = Judged.get(rig, "/conclusions");

    assertThat(told.path("withinANight").path("reply").asString()).isEqualTo("changes");
    assertThat(told.path("withinAMonth").path("reply").asString()).isEqualTo("changes");
    assertThat(value(told, "night-ratio").path("value"))
        .isEqualTo(nights.path("meanObservedRatio"));
    assertThat(value(told, "moon-distance").path("value"))
        .isEqualTo(nights.path("distanceEarthRadii"));
    assertThat(value(told, "anomalistic-month").path("value"))
        .isEqualTo(cycle.path("period").path("days"));
    assertThat(value(told, "eccentricity").path("uncertainty"))
        .isEqualTo(cycle.path("eccentricity").path("uncertainty"));
    assertThat(value(told, "moon-diameter").path("value"))
        .isEqualTo(cycle.path("moonDiameterKm").path("value"));
    assertThat(told.path("hypotheses").path("log10BayesFactor"))
        .isEqualTo(Judged.get(rig, "/hypotheses").path("log10BayesFactor"));
    assertThat(told.path("outlook")).isNotEmpty();
  }

  @Test
  void leaveOutWhatRestsOnTablesWhereThatIsWanted() {
    JsonNode told = Judged.get(demo(), "/conclusions?selfReliant=true");

    assertThat(told.path("selfReliant").asBoolean()).isTrue();
    assertThat(told.path("statements")).isNotEmpty();
    told.path("statements")
        .forEach(
            each -> {
              assertThat(each.path("basis").asString()).isEqualTo("readings");
              assertThat(each.has("computed")).isFalse();
            });
    assertThat(told.has("hypotheses")).isFalse();
    List<Integer> counts = new ArrayList<>();
    Judged.get(demo(), "/nights")
        .path("nights")
        .forEach(night -> counts.add(night.path("readingCount").asInt()));
    assertThat(told.path("pairCount").asLong())
        .as("nights whose ratio needs no computed growth")
        .isEqualTo(counts.stream().filter(count -> count == 2).count())
        .isPositive();
    assertThat(value(told, "moon-distance").path("value").asDouble()).isBetween(50.0, 72.0);
  }

  @Test
  void sayNothingOfARigWithoutReadings() {
    RigClient rig = RigClient.described(http, "conclusions-none");

    JsonNode told = Judged.get(rig, "/conclusions");

    assertThat(told.path("withinANight").path("reply").asString()).isEqualTo("too-few");
    assertThat(told.path("withinAMonth").path("reply").asString()).isEqualTo("too-few");
    assertThat(told.path("statements")).isEmpty();
    told.path("outlook").forEach(each -> assertThat(each.has("more")).isFalse());
  }

  @Test
  void giveEveryNumberOfTheTableByLatitude() {
    http.get()
        .uri("/api/hypotheses/ratios?latitudeDeg=36.5,51.5,-33.9,40")
        .exchange()
        .expectStatus()
        .isOk()
        .expectBody()
        .jsonPath("$.nearMoonHeightKm")
        .isEqualTo(4828.032)
        .jsonPath("$.ratios.length()")
        .isEqualTo(4)
        .jsonPath("$.ratios[?(@.ruleOfThumbPercent > 1.265 && @.ruleOfThumbPercent < 1.275)]")
        .isNotEmpty();
    http.get()
        .uri("/api/hypotheses/ratios?latitudeDeg=90")
        .exchange()
        .expectStatus()
        .is4xxClientError()
        .expectBody()
        .jsonPath("$.violations[0].field")
        .isEqualTo("latitudeDeg");
  }

  private RigClient demo() {
    Rig rig = demo.enter();
    return new RigClient(http, rig.slug());
  }

  private static JsonNode value(JsonNode told, String quantity) {
    for (JsonNode each : told.path("statements")) {
      if (each.path("quantity").asString().equals(quantity)) {
        return each;
      }
    }
    throw new AssertionError("no " + quantity + " in " + told);
  }
}

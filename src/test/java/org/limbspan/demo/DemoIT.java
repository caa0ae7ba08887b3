package org.limbspan.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.Judged;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.ActiveProfiles;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** The demo as a visitor meets it. */
@LimbspanIT
@ActiveProfiles("demo")
class DemoIT {

  @Autowired private RestTestClient http;
  @Autowired private Demo demo;

  @Test
  void showsTheCycleAndRaisesTheOneNudge() {
    RigClient rig = new RigClient(http, DemoScenario.SLUG);

    JsonNode alerts = Judged.get(rig, "/alerts").path("alerts");

    assertThat(alerts).as(alerts.toString()).hasSize(1);
    JsonNode alert = alerts.get(0);
    assertThat(alert.path("kind").asString()).isEqualTo("scale-step");
    assertThat(DemoCamera.NUDGED_AT)
        .isBetween(
            Instant.parse(alert.path("onsetFrom").asString()),
            Instant.parse(alert.path("onsetTo").asString()));
    assertThat(Math.abs(alert.path("sizePercent").asDouble() - DemoCamera.NUDGE_PERCENT))
        .isLessThan(2 * alert.path("uncertaintyPercent").asDouble());
    JsonNode cycle = Judged.get(rig, "/cycle");
    assertThat(cycle.path("months").size()).isGreaterThan(12);
    assertThat(cycle.path("swing").path("verdict").asString()).isEqualTo("agrees");
  }

  @Test
  void isMarkedAsInventedAndEnteredOnce() {
    RigClient rig = new RigClient(http, DemoScenario.SLUG);
    String before = rig.getText("/readings", "text/csv");

    demo.enter();

    assertThat(rig.getText("/readings", "text/csv")).isEqualTo(before);
    assertThat(before.lines().skip(1)).isNotEmpty().allMatch(line -> line.contains("invented"));
    assertThat(rig.get("").body().path("name").asString()).contains("(invented)");
  }
}

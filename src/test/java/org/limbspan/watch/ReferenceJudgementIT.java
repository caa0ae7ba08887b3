package org.limbspan.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.testing.Judged;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.ReferenceFolder;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/**
 * What the service says of the simulated rigs, over HTTP, against their truth (an independent
 * simulator's, see the README of {@code reference/readings}).
 */
@LimbspanIT
class ReferenceJudgementIT {

  @Autowired private RestTestClient http;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "clean-pairs",
        "clean-hourly",
        "clean-triples-3y",
        "declared-change",
        "sent-twice"
      })
  void raisesNothingWhereNothingIsWrong(String name) {
    RigClient rig = sent(name);

    assertThat(Judged.get(rig, "/alerts").path("alerts")).isEmpty();
    JsonNode swing = Judged.get(rig, "/cycle").path("swing");
    assertThat(swing.path("verdict").asString()).isEqualTo("agrees");
    assertThat(Math.abs(swing.path("slope").asDouble() - 1))
        .isLessThan(3 * swing.path("slopeUncertainty").asDouble());
    assertThat(Judged.get(rig, "/nights").path("summary").path("verdict").asString())
        .isEqualTo("agrees");
  }

  @ParameterizedTest
  @ValueSource(strings = {"step-0.5", "step-minus-1"})
  void raisesOneStepWithItsOnsetAndSize(String name) {
    RigClient rig = sent(name);

    JsonNode alert = only(rig);
    JsonNode fault = new ReferenceFolder(name).truth().path("faults").get(0);
    assertThat(alert.path("kind").asString()).isEqualTo("scale-step");
    assertThat(Instant.parse(fault.path("onset").asString()))
        .isBetween(
            Instant.parse(alert.path("onsetFrom").asString()),
            Instant.parse(alert.path("onsetTo").asString()));
    double error = alert.path("sizePercent").asDouble() - fault.path("size").asDouble();
    assertThat(Math.abs(error)).isLessThan(2 * alert.path("uncertaintyPercent").asDouble());
    assertThat(alert.path("explanation").asString()).contains("percent (standard uncertainty");
    assertThat(alert.path("likelyCauses").get(0).path("cause").asString()).isEqualTo("zoom-moved");
  }

  @ParameterizedTest
  @CsvSource({
    "drift-0.1, scale-drift",
    "scatter-x3, scatter-growth",
    "calibration-at-49m, calibration-conflict",
    "vertical-as-horizontal, altitude-trend",
    "local-time-as-utc, clock-suspect",
  })
  void namesTheFaultAndNothingElse(String name, String kind) {
    RigClient rig = sent(name);

    JsonNode alert = only(rig);
    assertThat(alert.path("kind").asString()).isEqualTo(kind);
    Instant onset =
        Instant.parse(
            new ReferenceFolder(name).truth().path("faults").get(0).path("onset").asString());
    assertThat(onset)
        .isBetween(
            Instant.parse(alert.path("onsetFrom").asString()),
            Instant.parse(alert.path("onsetTo").asString()));
    // the fault is the rig's: with it taken into account the Moon's swing is as computed
    assertThat(Judged.get(rig, "/cycle").path("swing").path("verdict").asString())
        .isEqualTo("agrees");
  }

  @Test
  void turnsToTheNearMoonWhereTheReadingsDo() {
    RigClient rig = sent("near-moon-world");

    assertThat(only(rig).path("kind").asString()).isIn("ratio-departure", "swing-departure");
    assertThat(Judged.get(rig, "/hypotheses").path("log10BayesFactor").asDouble()).isLessThan(-10);
  }

  @ParameterizedTest
  @ValueSource(strings = {"clean-pairs", "step-0.5", "vertical-as-horizontal", "scatter-x3"})
  void staysWithTheOrbitingMoonElsewhere(String name) {
    RigClient rig = sent(name);

    JsonNode hypotheses = Judged.get(rig, "/hypotheses");
    assertThat(hypotheses.path("log10BayesFactor").asDouble()).isGreaterThan(10);
    assertThat(hypotheses.path("sensitivity").size()).isEqualTo(4);
    hypotheses
        .path("sensitivity")
        .forEach(each -> assertThat(each.path("log10BayesFactor").asDouble()).isGreaterThan(10));
    assertThat(hypotheses.path("hypotheses").get(0).path("name").asString())
        .isEqualTo("orbiting-moon");
  }

  /** Each folder once per context, however many tests look at it. */
  private RigClient sent(String name) {
    String slug = "judged-" + name.replace('.', '-');
    RigClient known = new RigClient(http, slug);
    if (known.get("").status() == 200) {
      return known;
    }
    ReferenceFolder folder = new ReferenceFolder(name);
    RigClient rig = folder.describe(http, slug);
    assertThat(rig.postCsv("/readings", folder.readings()).status()).isEqualTo(200);
    return rig;
  }

  private static JsonNode only(RigClient rig) {
    JsonNode alerts = Judged.get(rig, "/alerts").path("alerts");
    assertThat(alerts).as(alerts.toString()).hasSize(1);
    return alerts.get(0);
  }
}

package org.limbspan.drift;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.sky.SkyFixture;

/**
 * The judgement of the rigs that an independent program simulated ({@code reference/readings}),
 * against the truth which that program wrote.
 */
class JudgeReferenceTest {

  private final Judge judge = new Judge(SkyFixture.sky());

  @ParameterizedTest
  @ValueSource(
      strings = {
        "clean-hourly",
        "clean-pairs",
        "clean-triples-3y",
        "declared-change",
        "sent-twice"
      })
  void isSilentAbout(String folder) {
    assertThat(judge.judge(SimulatedHistory.of(folder).rig())).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "step-0.5,               SCALE_STEP",
    "step-minus-1,           SCALE_STEP",
    "drift-0.1,              SCALE_DRIFT",
    "scatter-x3,             SCATTER_GROWTH",
    "calibration-at-49m,     CALIBRATION_CONFLICT",
    "vertical-as-horizontal, ALTITUDE_TREND",
    "local-time-as-utc,      CLOCK_SUSPECT",
    "near-moon-world,        RATIO_DEPARTURE"
  })
  void namesTheOneThingThatHappenedTo(String folder, AlertKind kind) {
    assertThat(judge.judge(SimulatedHistory.of(folder).rig()))
        .extracting(Finding::kind)
        .containsExactly(kind);
  }

  @ParameterizedTest
  @ValueSource(strings = {"step-0.5", "step-minus-1", "drift-0.1"})
  void coversTheTruthOf(String folder) {
    SimulatedHistory history = SimulatedHistory.of(folder);
    List<Finding> findings = judge.judge(history.rig());
    Finding finding = findings.get(0);
    Instant onset = Instant.parse(history.truth().get("faults").get(0).get("onset").asString());
    assertThat(onset).isBetween(finding.onsetFrom(), finding.onsetTo());
    double off = finding.sizePercent() - history.truth().get("size").asDouble();
    assertThat(Math.abs(off)).isLessThan(2 * finding.uncertaintyPercent());
  }
}

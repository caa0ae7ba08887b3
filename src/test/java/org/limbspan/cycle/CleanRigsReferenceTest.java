package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Rigs without a fault, written by an independent simulator (reference/readings/README.md): what is
 * estimated must lie about the truth as its uncertainty claims.
 */
class CleanRigsReferenceTest {

  @ParameterizedTest
  @ValueSource(strings = {"clean-pairs", "clean-hourly", "clean-triples-3y"})
  void slopeIsOneWithinTwoUncertainties(String folder) {
    RigFixture rig = RigFixture.of(folder);
    SwingSlope swing = SlopeEstimator.estimate(rig.observations(), rig.site());
    assertThat(Math.abs(swing.slope().orElseThrow().sigmasFrom(1))).isLessThan(2);
    assertThat(swing.slope().orElseThrow().uncertainty()).isLessThan(0.003);
    assertThat(swing.verdict()).isEqualTo(Verdict.AGREES);
  }

  @ParameterizedTest
  @ValueSource(strings = {"clean-pairs", "clean-hourly", "clean-triples-3y"})
  void nightRatioIsAsPredictedWithinTwoUncertainties(String folder) {
    RigFixture rig = RigFixture.of(folder);
    NightRatios nights = NightRatioEstimator.estimate(rig.observations(), rig.site());
    assertThat(Math.abs(nights.slope().orElseThrow().sigmasFrom(1))).isLessThan(2);
    assertThat(nights.slope().orElseThrow().uncertainty()).isLessThan(0.03);
    assertThat(nights.verdict()).isEqualTo(Verdict.AGREES);
  }
}

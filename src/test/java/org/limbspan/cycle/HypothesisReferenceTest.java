package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.cycle.NearMoonAssumptions.Height;
import org.limbspan.cycle.NearMoonAssumptions.MonthlyChange;

/** Rigs of an independent simulator (reference/readings/README.md): which world they are in. */
class HypothesisReferenceTest {

  @ParameterizedTest
  @EnumSource(Height.class)
  void nearMoonWorldIsTold(Height height) {
    RigFixture rig = RigFixture.of("near-moon-world");
    for (MonthlyChange change : MonthlyChange.values()) {
      HypothesisComparison comparison =
          HypothesisEstimator.compare(
              rig.observations(), rig.site(), new NearMoonAssumptions(height, change));
      assertThat(comparison.log10BayesFactor()).isLessThan(-10);
    }
  }

  /** The simulator's Moon hangs 3000 statute miles above its sublunar point. */
  @Test
  void heightOfTheNearMoonComesOut() {
    RigFixture rig = RigFixture.of("near-moon-world");
    Hypothesis near =
        HypothesisEstimator.compare(
                rig.observations(),
                rig.site(),
                new NearMoonAssumptions(Height.FREE, MonthlyChange.FREE))
            .nearMoon();
    assertThat(near.heightKm().orElseThrow()).isCloseTo(4828.03, within(10.0));
    assertThat(Math.abs(near.monthlyExponent().orElseThrow().sigmasFrom(0))).isLessThan(3);
    assertThat(near.statedFactor()).isBetween(0.5, 1.5);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "calibration-at-49m",
        "clean-hourly",
        "clean-pairs",
        "clean-triples-3y",
        "declared-change",
        "drift-0.1",
        "local-time-as-utc",
        "scatter-x3",
        "sent-twice",
        "step-0.5",
        "step-minus-1",
        "vertical-as-horizontal"
      })
  void everyOtherRigIsUnderTheOrbitingMoonWhateverItsFault(String folder) {
    RigFixture rig = RigFixture.of(folder);
    for (MonthlyChange change : MonthlyChange.values()) {
      assertThat(
              HypothesisEstimator.compare(
                      rig.observations(), rig.site(), new NearMoonAssumptions(Height.FIXED, change))
                  .log10BayesFactor())
          .isGreaterThan(10);
    }
  }

  /** Two or three readings fit any height alike; what they say is little, and never no number. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 6, 9})
  void aFewReadingsSayLittleWhereverTheyBegin(int count) {
    RigFixture rig = RigFixture.of("clean-pairs");
    for (int from = 0; from + count <= rig.observations().size(); from += 3) {
      for (HypothesisComparison comparison :
          HypothesisEstimator.compare(
              rig.observations().subList(from, from + count),
              rig.site(),
              NearMoonAssumptions.ALL)) {
        assertThat(comparison.log10BayesFactor()).as("from %d", from).isFinite();
      }
    }
  }
}

package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class OutlierWeightsTest {

  private static final Grouping ALONE = Grouping.by(List.of(0, 1, 2, 3, 4, 5));
  private static final double[] UNIT = {1, 1, 1, 1, 1, 1};

  @Test
  void doubtGrowsWithTheDeviation() {
    double[] weights =
        OutlierWeights.of(
            new double[] {0, 1, 3, 4, 10, -2300}, UNIT, UNIT, ALONE, NightPart.RANDOM, 0);
    assertThat(weights[0]).isGreaterThan(0.99);
    assertThat(weights[1]).isGreaterThan(0.98);
    assertThat(weights[2]).isBetween(0.6, 0.95);
    assertThat(weights[3]).isLessThan(0.2);
    assertThat(weights[4]).isLessThan(0.04);
    // the pull of a gross error, weight times deviation, falls as its inverse
    assertThat(weights[5] * 2300 * 2300).isLessThan(10);
  }

  @Test
  void readingAloneInAnAbsorbedNightIsNotDoubted() {
    assertThat(
            OutlierWeights.of(
                new double[] {0, 1, 3, 4, 10, -2300}, UNIT, UNIT, ALONE, NightPart.ABSORBED, 0))
        .containsOnly(1);
  }

  @Test
  void judgesAReadingAgainstTheOthersOfItsNight() {
    Grouping together = Grouping.by(List.of(0, 0, 0, 1, 1, 1));
    double[] residuals = {5, 5.5, 4.5, 0, 0.5, 8};
    double[] weights = UNIT;
    for (int round = 0; round < 4; round++) {
      weights = OutlierWeights.of(residuals, UNIT, weights, together, NightPart.RANDOM, 5);
    }
    assertThat(weights[0]).isGreaterThan(0.95);
    assertThat(weights[3]).isGreaterThan(0.9);
    assertThat(weights[5]).isLessThan(0.2);
  }
}

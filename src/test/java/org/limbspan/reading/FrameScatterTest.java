package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class FrameScatterTest {

  @Test
  void isTheDeviationOverTheRootOfTheCount() {
    // Deviations -1, 0, 1: s = 1.
    assertThat(FrameScatter.uncertaintyOfMean(List.of(9.0, 10.0, 11.0)).orElseThrow())
        .isCloseTo(1 / Math.sqrt(3), within(1e-15));
  }

  @Test
  void saysNothingOfFewerThanThreeFrames() {
    assertThat(FrameScatter.uncertaintyOfMean(List.of())).isEmpty();
    assertThat(FrameScatter.uncertaintyOfMean(List.of(10.0))).isEmpty();
    assertThat(FrameScatter.uncertaintyOfMean(List.of(9.0, 11.0))).isEmpty();
  }

  @Test
  void saysNothingOfFramesThatAreAllAlike() {
    assertThat(FrameScatter.uncertaintyOfMean(List.of(10.0, 10.0, 10.0))).isEmpty();
  }
}

package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * JCGM 100:2008, 4.4.3 with table 1: twenty readings of a temperature, mean 100.145, experimental
 * standard deviation 1.489, of the mean 0.333 degrees Celsius. The readings are from memory; they
 * give the published figures.
 */
class FrameScatterReferenceTest {

  private static final List<Double> READINGS =
      List.of(
          96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42,
          100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72);

  @Test
  void meanAndItsUncertaintyAreThoseOfTheGuide() {
    assertThat(FrameScatter.mean(READINGS)).isCloseTo(100.145, within(0.0005));
    assertThat(FrameScatter.uncertaintyOfMean(READINGS).orElseThrow())
        .isCloseTo(0.333, within(0.0005));
  }
}

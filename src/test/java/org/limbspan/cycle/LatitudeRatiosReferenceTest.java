package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LatitudeRatiosReferenceTest {

  /** Common practice, no source; given to two figures. */
  @ParameterizedTest
  @CsvSource({"36.5, 2.0", "51.5, 1.6", "-33.9, 2.9"})
  void nearMoonRatioIsTheUsualOne(double latitudeDeg, double ratio) {
    assertThat(LatitudeRatios.at(latitudeDeg, NearMoon.HEIGHT_KM).nearMoonRatio())
        .isCloseTo(ratio, within(0.05));
  }

  /** Common practice, no source: 1.27 percent at latitude 40. */
  @Test
  void ruleOfThumbIsTheUsualOne() {
    LatitudeRatios ratios = LatitudeRatios.at(40, NearMoon.HEIGHT_KM);
    assertThat(ratios.ruleOfThumbPercent()).isCloseTo(1.27, within(0.005));
    assertThat(100 * (ratios.orbitingMoonRatio() - 1))
        .isCloseTo(ratios.ruleOfThumbPercent(), within(0.02));
  }

  /** From the equator, Pythagoras: 10,007.5 km to the point below, and the height. */
  @Test
  void equatorIsPythagoras() {
    double radius = 6371.0088 * Math.PI / 2;
    double expected = Math.hypot(Math.sqrt(2) * radius, 4828.032) / 4828.032;
    assertThat(LatitudeRatios.at(0, NearMoon.HEIGHT_KM).nearMoonRatio())
        .isCloseTo(expected, within(1e-9));
    assertThat(LatitudeRatios.at(0, NearMoon.HEIGHT_KM).orbitingMoonRatio())
        .isCloseTo(
            Math.sqrt(1 - Math.pow(6371.0088 / 384400, 2)) / (1 - 6371.0088 / 384400),
            within(1e-12));
  }

  @Test
  void refusesThePolesAndNoHeight() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LatitudeRatios.at(90, 4828))
        .withMessageContaining("latitudeDeg 90.0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LatitudeRatios.at(Double.NaN, 4828))
        .withMessageContaining("latitudeDeg NaN");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LatitudeRatios.at(10, 0))
        .withMessageContaining("nearMoonHeightKm 0.0");
  }
}

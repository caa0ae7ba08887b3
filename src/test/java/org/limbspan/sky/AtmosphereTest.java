package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AtmosphereTest {

  /**
   * Pressures of the International Standard Atmosphere (ISO 2533:1975, table values from memory):
   * 1013.25, 898.75, 540.20 and 307.4 hPa at 0, 1000, 5000 and 9000 m, as parts of that at sea
   * level.
   */
  @ParameterizedTest
  @CsvSource({"0, 1013.25", "1000, 898.75", "5000, 540.20", "9000, 307.4"})
  void thinsAsTheStandardAtmosphereDoes(double elevationM, double standardHPa) {
    assertThat(Atmosphere.meanAt(elevationM).pressureHPa() / 1010)
        .isCloseTo(standardHPa / 1013.25, within(5e-4));
  }

  @Test
  void isTheAirOfTheRefractionTablesAtSeaLevel() {
    assertThat(Atmosphere.meanAt(0)).isEqualTo(new Atmosphere(1010, 10));
  }

  @Test
  void refusesAirThatNoSiteHas() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Atmosphere(1101, 10))
        .withMessage("pressureHPa 1101.0: expected 0 to 1100");
    assertThatIllegalArgumentException().isThrownBy(() -> new Atmosphere(-1, 10));
    assertThatIllegalArgumentException().isThrownBy(() -> new Atmosphere(Double.NaN, 10));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Atmosphere(1010, 61))
        .withMessage("temperatureC 61.0: expected -90 to 60");
    assertThatIllegalArgumentException().isThrownBy(() -> new Atmosphere(1010, -91));
  }
}

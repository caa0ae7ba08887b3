package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CelestialCoordinateTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "13h 25m 11.6s  | 201.298333",
        "13 25 11.6     | 201.298333",
        "13:25:11,6     | 201.298333",
        "13\u02b0 25\u1d50 11.6\u02e2 | 201.298333",
        "13h 25.2m      | 201.3",
        "13.42h         | 201.3",
        "201.2983       | 201.2983",
        "201.2983\u00b0 | 201.2983",
        "0              | 0",
        "23h59m59.999s  | 359.999996",
      })
  void readsARightAscension(String text, double degrees) {
    assertThat(CelestialCoordinate.rightAscensionDeg(text))
        .hasValueSatisfying(d -> assertThat(d).isCloseTo(degrees, within(1e-5)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "noon", "24h", "360", "-3", "13 60 0", "1 2 3 4", "13.5 20", "13\u00b0 25 11"})
  void takesNothingElseForARightAscension(String text) {
    assertThat(CelestialCoordinate.rightAscensionDeg(text)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "-11.1614       | -11.1614",
        "\u221211\u00b0 09\u2032 41\u2033 | -11.161389",
        "-11:09:41      | -11.161389",
        "-0 12 30       | -0.208333",
        "+19d10m57s     | 19.1825",
        "19 10 57.0     | 19.1825",
      })
  void readsADeclination(String text, double degrees) {
    assertThat(CelestialCoordinate.declinationDeg(text))
        .hasValueSatisfying(d -> assertThat(d).isCloseTo(degrees, within(1e-5)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "90.1", "south", "11 N", "13h 25m", "5 60 0"})
  void takesNothingElseForADeclination(String text) {
    assertThat(CelestialCoordinate.declinationDeg(text)).isEmpty();
  }
}

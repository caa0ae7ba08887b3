package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CoordinateTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "-4.0817          | -4.0817",
        "\u22124.0817     | -4.0817",
        "4,0817 W         | -4.0817",
        "W 4.0817         | -4.0817",
        "4\u00b0 04\u2032 54\u2033 W | -4.0816667",
        "4\u00b0 4' 54.0\" w         | -4.0816667",
        "4 04.9 E         | 4.0816667",
        "+179.5           | 179.5",
        "180 W            | -180",
        "0 W              | 0",
        "11E              | 11",
      })
  void readsALongitudeAsPeopleWriteIt(String text, double degrees) {
    assertThat(Coordinate.LONGITUDE.degrees(text))
        .hasValueSatisfying(d -> assertThat(d).isCloseTo(degrees, within(1e-6)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "north",
        "91",
        "-90.01",
        "52 N 3",
        "-52 S",
        "52 E",
        "52 61",
        "52.5 30",
        "NaN",
        "1 2 3 4",
        "52 30 70",
        "Infinity",
        "5e1",
        "N"
      })
  void takesNothingElseForALatitude(String text) {
    assertThat(Coordinate.LATITUDE.degrees(text)).isEmpty();
  }

  @Test
  void writesDegreesAndDecimalMinutes() {
    assertThat(Coordinate.LATITUDE.words(28.1235)).isEqualTo("28\u00b0\u00a007.4\u2032\u00a0N");
    assertThat(Coordinate.LONGITUDE.words(-15.4363)).isEqualTo("15\u00b0\u00a026.2\u2032\u00a0W");
  }

  @Test
  void carriesRoundedMinutesIntoTheDegrees() {
    assertThat(Coordinate.LATITUDE.words(-33.9999)).isEqualTo("34\u00b0\u00a000.0\u2032\u00a0S");
  }
}

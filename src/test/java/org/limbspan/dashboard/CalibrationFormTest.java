package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.rig.NewCalibration;
import org.limbspan.scale.ImageLength;
import org.limbspan.scale.LengthUnit;
import org.limbspan.scale.Target;

class CalibrationFormTest {

  private static final RigTime VIENNA = new RigTime(ZoneId.of("Europe/Vienna"));
  private static final Instant NOW = Instant.parse("2024-07-01T12:00:00Z");

  @Test
  void turnsInchesAndYardsIntoMetricExactly() {
    CalibrationForm form = form("11", "in", "50", "yd", "1100", "px");
    assertThat(form.complaints(VIENNA, NOW)).isEmpty();
    NewCalibration entered = form.calibration(VIENNA);
    // International yard and pound agreement, 1959: an inch is 25.4 mm, a yard 0.9144 m.
    assertThat(entered.calibration().reference())
        .isEqualTo(new Target(279.4, 2.54, 45.72, 0.09144));
    assertThat(entered.takenAt()).isEqualTo(Instant.parse("2024-06-20T10:00:00Z"));
  }

  @Test
  void takesInchesOnAScreenAsMillimetres() {
    CalibrationForm form = form("29,7", "cm", "164", "ft", "8 1/2", "in");
    assertThat(form.complaints(VIENNA, NOW)).isEmpty();
    assertThat(form.calibration(VIENNA).calibration().measured())
        .isEqualTo(new ImageLength(215.9, 2.54, LengthUnit.MILLIMETRE));
  }

  @Test
  void complainsOfEachFieldByName() {
    CalibrationForm form =
        new CalibrationForm(
            "noon", "long", "0.1", "mm", "50", "60", "m", "1100", "0", "px", "x".repeat(2001));
    assertThat(form.complaints(VIENNA, NOW))
        .containsOnlyKeys(
            "takenAt", "length", "distanceUncertainty", "measuredUncertainty", "note");
    assertThat(form("297", "furlong", "50", "m", "1100", "px").complaints(VIENNA, NOW))
        .containsOnlyKeys("length");
  }

  @ParameterizedTest
  @CsvSource({"297, 297", "'12,5', 12.5", ".5, 0.5", "\u22123, -3", "8 1/2, 8.5", "3/4, 0.75"})
  void readsNumbersAsPeopleTypeThem(String typed, double value) {
    assertThat(TypedNumber.of(typed)).hasValue(value);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "ten", "1.2.3", "1/0", "NaN", "1e400", "0x10"})
  void takesNothingElseForANumber(String typed) {
    assertThat(TypedNumber.of(typed)).isEmpty();
  }

  private static CalibrationForm form(
      String length,
      String lengthUnit,
      String distance,
      String distanceUnit,
      @Nullable String measured,
      String measuredUnit) {
    return new CalibrationForm(
        "2024-06-20 12:00",
        length,
        "0.1",
        lengthUnit,
        distance,
        "0.1",
        distanceUnit,
        measured,
        "0.1",
        measuredUnit,
        "");
  }
}

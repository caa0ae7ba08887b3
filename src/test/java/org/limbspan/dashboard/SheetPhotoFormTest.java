package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.photo.SheetTarget;
import org.limbspan.scale.Target;

class SheetPhotoFormTest {

  private static final RigTime VIENNA = new RigTime(ZoneId.of("Europe/Vienna"));
  private static final Instant FROM = Instant.parse("1980-01-01T00:00:00Z");
  private static final Instant NOW = Instant.parse("2026-06-01T12:00:00Z");

  /** International yard and pound agreement, 1959: an inch is 25.4 mm, a yard 0.9144 m. */
  @Test
  void turnsInchesAndYardsIntoMetricExactly() {
    SheetPhotoForm form = form("11", "0.01", "in", "8 1/2");
    assertThat(complaints(form)).isEmpty();
    assertThat(form.target())
        .isEqualTo(new SheetTarget(new Target(279.4, 0.254, 45.72, 0.09144), 215.9));
  }

  @Test
  void takesASheetWhoseOtherSideIsNotKnown() {
    SheetPhotoForm form = form("297", "0.2", "mm", "  ");
    assertThat(complaints(form)).isEmpty();
    assertThat(form.target().otherSideMm()).isNull();
  }

  @Test
  void complainsOfEachFieldByName() {
    SheetPhotoForm form =
        new SheetPhotoForm("noon", "tall", "1", "mm", "50", "60", "m", "wide", null);
    assertThat(complaints(form))
        .containsOnlyKeys("sheetTakenAt", "sheetLength", "sheetDistanceUncertainty", "otherSide");
    SheetPhotoForm unit =
        new SheetPhotoForm(null, "297", "1", "furlong", "50", "1", "m", "210", null);
    assertThat(complaints(unit)).containsOnlyKeys("sheetLength");
  }

  /** 297 / 1.02 is 291.18. */
  @ParameterizedTest
  @ValueSource(strings = {"420", "297", "291.2", "0", "-210"})
  void takesNoOtherSideThatMayBeTheTallOne(String otherSide) {
    assertThat(complaints(form("297", "0.2", "mm", otherSide))).containsOnlyKeys("otherSide");
    assertThat(complaints(form("297", "0.2", "mm", "291.1"))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"2026-05-28 12:00, 2026-05-28T10:00:00Z", "2026-05-28 12:00Z, 2026-05-28T12:00:00Z"})
  void readsTheTimeAsTheTypedCalibrationDoes(String typed, Instant meant) {
    assertThat(complaints(taken(typed))).isEmpty();
    assertThat(taken(typed).typedTime().instant(VIENNA)).hasValue(meant);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "   "})
  void needsNoTime(String typed) {
    assertThat(complaints(taken(typed))).isEmpty();
    assertThat(taken(typed).typedTime().instant(VIENNA)).isEmpty();
    assertThat(SheetPhotoForm.EMPTY.typedTime().instant(VIENNA)).isEmpty();
  }

  /** Directive 2000/84/EC: clocks go forward and back at 01:00 UTC of these two Sundays. */
  @ParameterizedTest
  @CsvSource({
    "28 May, is not understood",
    "2026-06-01 14:01, has passed",
    "1980-01-01 00:59, from 1980-01-01 01:00 on",
    "2026-03-29 02:30, set forward",
    "2025-10-26 02:30, twice"
  })
  void takesNoTimeThatCannotBe(String typed, String words) {
    assertThat(complaints(taken(typed))).containsOnlyKeys("sheetTakenAt");
    assertThat(complaints(taken(typed)).get("sheetTakenAt")).contains(words);
  }

  private static Map<String, String> complaints(SheetPhotoForm form) {
    return form.complaints(VIENNA, FROM, NOW);
  }

  private static SheetPhotoForm taken(String typed) {
    return new SheetPhotoForm(typed, "297", "0.2", "mm", "50", "0.02", "m", "210", null);
  }

  private static SheetPhotoForm form(
      String length, String lengthUncertainty, String unit, @Nullable String otherSide) {
    return new SheetPhotoForm(
        null, length, lengthUncertainty, unit, "50", "0.1", "yd", otherSide, null);
  }
}

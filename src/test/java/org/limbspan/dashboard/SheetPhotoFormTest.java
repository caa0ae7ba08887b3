package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.photo.SheetTarget;
import org.limbspan.scale.Target;

class SheetPhotoFormTest {

  /** International yard and pound agreement, 1959: an inch is 25.4 mm, a yard 0.9144 m. */
  @Test
  void turnsInchesAndYardsIntoMetricExactly() {
    SheetPhotoForm form = form("11", "0.01", "in", "8 1/2");
    assertThat(form.complaints()).isEmpty();
    assertThat(form.target())
        .isEqualTo(new SheetTarget(new Target(279.4, 0.254, 45.72, 0.09144), 215.9));
  }

  @Test
  void takesASheetWhoseOtherSideIsNotKnown() {
    SheetPhotoForm form = form("297", "0.2", "mm", "  ");
    assertThat(form.complaints()).isEmpty();
    assertThat(form.target().otherSideMm()).isNull();
  }

  @Test
  void complainsOfEachFieldByName() {
    SheetPhotoForm form = new SheetPhotoForm("tall", "1", "mm", "50", "60", "m", "wide", null);
    assertThat(form.complaints())
        .containsOnlyKeys("sheetLength", "sheetDistanceUncertainty", "otherSide");
    SheetPhotoForm unit = new SheetPhotoForm("297", "1", "furlong", "50", "1", "m", "210", null);
    assertThat(unit.complaints()).containsOnlyKeys("sheetLength");
  }

  /** 297 / 1.02 is 291.18. */
  @ParameterizedTest
  @ValueSource(strings = {"420", "297", "291.2", "0", "-210"})
  void takesNoOtherSideThatMayBeTheTallOne(String otherSide) {
    assertThat(form("297", "0.2", "mm", otherSide).complaints()).containsOnlyKeys("otherSide");
    assertThat(form("297", "0.2", "mm", "291.1").complaints()).isEmpty();
  }

  private static SheetPhotoForm form(
      String length, String lengthUncertainty, String unit, @Nullable String otherSide) {
    return new SheetPhotoForm(length, lengthUncertainty, unit, "50", "0.1", "yd", otherSide, null);
  }
}

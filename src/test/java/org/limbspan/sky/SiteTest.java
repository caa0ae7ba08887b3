package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;

class SiteTest {

  @Test
  void takesThePolesTheDateLineAndTheSummits() {
    assertThat(new Site(90, 180, 9000).latitudeDeg()).isEqualTo(90);
    assertThat(new Site(-90, -180, -500).longitudeDeg()).isEqualTo(-180);
  }

  @Test
  void refusesLatitudeBeyondNinetyDegrees() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Site(90.01, 0, 0))
        .withMessage("latitudeDeg 90.01: expected -90.0 to 90.0");
    assertThatIllegalArgumentException().isThrownBy(() -> new Site(Double.NaN, 0, 0));
  }

  @Test
  void refusesLongitudeBeyondHalfATurn() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Site(0, 190, 0))
        .withMessage("longitudeDeg 190.0: expected -180.0 to 180.0");
  }

  @Test
  void refusesElevationsWithoutGround() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Site(0, 0, 9001))
        .withMessage("elevationM 9001.0: expected -500.0 to 9000.0");
  }
}

package org.limbspan.scale;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.sky.Atmosphere;
import org.limbspan.sky.Refraction;
import org.limbspan.sky.StarSight;

class StarSeparationTest {

  private static final Atmosphere AIR = Atmosphere.meanAt(0);

  /** The uniform contraction of the disc, 0.0003, is that of any level pair. */
  @ParameterizedTest
  @ValueSource(doubles = {20, 45, 70, 89})
  void narrowsALevelPairByTheSameAtEveryAltitude(double altitudeDeg) {
    assertThat(loss(30, altitudeDeg, 0))
        .isCloseTo(Refraction.horizontalContraction(AIR), within(1.5e-5));
  }

  /**
   * By the derivative of Saemundsson's formula: 1.02' (1 - 10.3 / (h + 5.11)^2) over the sine
   * squared of (h + 10.3 / (h + 5.11)).
   */
  @ParameterizedTest
  @CsvSource({"90, 0.000297, 1e-6", "45, 0.00059, 5e-6", "20, 0.00240, 1e-5", "10, 0.00825, 2e-5"})
  void narrowsAnUprightPairTheMoreTheLower(double altitudeDeg, double loss, double give) {
    assertThat(loss(30, altitudeDeg, 90)).isCloseTo(loss, within(give));
  }

  @Test
  void putsAPairOnTheSkyAsItsAltitudeAndSlopeSay() {
    StarSeparation pair = StarSeparation.at(600, 40, 35, AIR);
    assertThat(pair.withoutAirArcmin()).isCloseTo(600, within(1e-9));
    assertThat(pair.airUncertaintyArcmin())
        .isCloseTo(0.1 * (600 - pair.asSeenArcmin()), within(1e-9));
    assertThat(StarSeparation.at(600, 40, 35, new Atmosphere(0, 10)).asSeenArcmin())
        .isCloseTo(600, within(1e-9));
  }

  @Test
  void refusesPairsTooLowAndStarsInOnePlace() {
    StarSight low = new StarSight(4.9, 5.06, 100);
    StarSight high = new StarSight(30, 30.03, 100);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> StarSeparation.of(low, high))
        .withMessageContaining("altitudeDeg 4.9");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> StarSeparation.of(high, high))
        .withMessageContaining("withoutAirArcmin 0.0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> StarSeparation.at(30, 40, 91, AIR))
        .withMessageContaining("slopeDeg 91.0");
  }

  private static double loss(double arcmin, double altitudeDeg, double slopeDeg) {
    StarSeparation pair = StarSeparation.at(arcmin, altitudeDeg, slopeDeg, AIR);
    return 1 - pair.asSeenArcmin() / pair.withoutAirArcmin();
  }
}

package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class RefractionTest {

  private static final Atmosphere AIR = new Atmosphere(1010, 10);

  @Test
  void growsWithPressureAndShrinksWithWarmth() {
    double mean = Refraction.atTrueAltitudeArcmin(10, AIR);
    assertThat(Refraction.atTrueAltitudeArcmin(10, new Atmosphere(505, 10)))
        .isCloseTo(mean / 2, within(1e-12));
    assertThat(Refraction.atTrueAltitudeArcmin(10, new Atmosphere(1010, 50)))
        .isCloseTo(mean * 283 / 323, within(1e-12));
  }

  @Test
  void doesNothingWithoutAir() {
    Atmosphere none = new Atmosphere(0, 10);
    for (double deg = -90; deg <= 90; deg += 0.25) {
      assertThat(Refraction.apparentAltitudeDeg(deg, none)).isEqualTo(deg);
      assertThat(Refraction.verticalFactor(deg, 31, none)).isEqualTo(1);
    }
    assertThat(Refraction.horizontalContraction(none)).isZero();
  }

  /** In steps of a thousandth of a degree, in the densest air that is accepted. */
  @Test
  void keepsTheApparentAltitudeRisingWithTheTrueOneAndFinite() {
    Atmosphere dense = new Atmosphere(1100, -90);
    double before = -91;
    for (int step = -90_000; step <= 90_000; step++) {
      double apparentDeg = Refraction.apparentAltitudeDeg(step / 1000.0, dense);
      assertThat(apparentDeg).isGreaterThan(before).isLessThanOrEqualTo(90);
      before = apparentDeg;
    }
  }

  @Test
  void flattensSmoothlyAndNeverBeyondAThird() {
    Atmosphere dense = new Atmosphere(1100, -90);
    double before = Refraction.verticalFactor(-90, 33, dense);
    for (int step = -90_000; step <= 90_000; step++) {
      double factor = Refraction.verticalFactor(step / 1000.0, 33, dense);
      assertThat(factor).isBetween(0.66, 1.0 + 1e-8).isCloseTo(before, within(5e-4));
      before = factor;
    }
  }

  @Test
  void leavesTheMoonAloneFarBelowTheHorizon() {
    assertThat(Refraction.apparentAltitudeDeg(-30, AIR)).isEqualTo(-30);
    assertThat(Refraction.verticalFactor(-30, 31, AIR)).isEqualTo(1);
    assertThat(Refraction.atTrueAltitudeArcmin(Refraction.FADED_DEG, AIR)).isZero();
  }

  @Test
  void makesBothDiametersAgreeAtTheZenith() {
    assertThat(Refraction.verticalFactor(90, 31, AIR)).isEqualTo(1);
    assertThat(Refraction.verticalFactor(89.9, 31, AIR)).isCloseTo(1, within(1e-8));
  }

  @Test
  void refusesAnglesOffTheSphere() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Refraction.atTrueAltitudeArcmin(90.1, AIR))
        .withMessage("altitudeDeg 90.1: expected -90 to 90");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Refraction.verticalFactor(Double.NaN, 31, AIR))
        .withMessage("altitudeDeg NaN: expected -90 to 90");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Refraction.atApparentAltitudeArcmin(-0.1, AIR))
        .withMessage("apparentAltitudeDeg -0.1: expected 0 to 90");
  }

  @Test
  void refusesADiameterThatIsNoMoon() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Refraction.verticalFactor(10, 0, AIR))
        .withMessage("diameterArcmin 0.0: expected 20 to 40");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Refraction.verticalFactor(10, Double.NaN, AIR));
  }
}

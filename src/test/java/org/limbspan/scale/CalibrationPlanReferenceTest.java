package org.limbspan.scale;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Relative uncertainties of a quotient add in quadrature: JCGM 100:2008, 5.1.6, equation (12); the
 * mean of n equal observations has the uncertainty of one over the root of n: 4.2.3, equation (5).
 */
class CalibrationPlanReferenceTest {

  /** Long side of A4 (ISO 216: 297 mm) at 50 m: 1225 arcseconds on 1100 px. */
  private static final CalibrationPlan USUAL =
      new CalibrationPlan(
          new Target(297, 0.15, 50, 0.02), new ImageLength(1100, 1, LengthUnit.PIXEL), 1, 1);

  @Test
  void addsThePartsInQuadrature() {
    assertThat(USUAL.fromLength()).isCloseTo(0.15 / 297, within(1e-8));
    assertThat(USUAL.fromDistance()).isCloseTo(0.02 / 50, within(1e-8));
    assertThat(USUAL.fromImages()).isCloseTo(1 / 1100.0, within(1e-12));
    double byHand =
        Math.sqrt(Math.pow(0.15 / 297, 2) + Math.pow(0.02 / 50, 2) + Math.pow(1 / 1100.0, 2));
    assertThat(USUAL.combined()).isCloseTo(byHand, within(1e-8));
  }

  @Test
  void agreesWithThePlateScaleOfTheSameCalibration() {
    PlateScale scale = new Calibration(USUAL.target(), USUAL.measured()).plateScale();
    assertThat(USUAL.combined()).isCloseTo(scale.relativeUncertainty(), within(1e-12));
  }

  @Test
  void averagesTapeReadingsAndPhotographsButNeverTheSheet() {
    CalibrationPlan more = USUAL.withMoreTapeReadings(3).withMorePhotographs(8);
    assertThat(more.fromDistance()).isCloseTo(USUAL.fromDistance() / 2, within(1e-12));
    assertThat(more.fromImages()).isCloseTo(USUAL.fromImages() / 3, within(1e-12));
    assertThat(more.fromLength()).isEqualTo(USUAL.fromLength());
  }

  @Test
  void tradesTapeForPixelsWithDistance() {
    CalibrationPlan twice = USUAL.atTimesTheDistance(2);
    assertThat(twice.fromDistance()).isCloseTo(USUAL.fromDistance() / 2, within(1e-8));
    // Half the angle is half as many pixels: with x = s/2d the next term is x^2/4, 2e-6 here.
    assertThat(twice.fromImages()).isCloseTo(2 * USUAL.fromImages(), within(1e-7));
    assertThat(twice.combined()).isGreaterThan(USUAL.combined());
    CalibrationPlan longer = twice.withTimesTheLength(2);
    assertThat(longer.fromImages()).isCloseTo(USUAL.fromImages(), within(1e-7));
    assertThat(longer.combined()).isLessThan(USUAL.combined());
  }

  @Test
  void refusesLessThanOneOfAnything() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new CalibrationPlan(USUAL.target(), USUAL.measured(), 0, 1))
        .withMessageContaining("tapeReadings 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new CalibrationPlan(USUAL.target(), USUAL.measured(), 1, 0))
        .withMessageContaining("photographs 0");
  }
}

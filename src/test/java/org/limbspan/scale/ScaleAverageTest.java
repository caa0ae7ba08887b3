package org.limbspan.scale;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class ScaleAverageTest {

  private static final Target SHEET = new Target(297, 0.15, 50, 0.02);

  @Test
  void singleCalibrationIsItsOwnMean() {
    Calibration only = on(SHEET, 1100, 1.1);
    MeanScale mean = ScaleAverage.of(List.of(only));
    assertThat(mean.scale().arcsecPerUnit())
        .isCloseTo(only.plateScale().arcsecPerUnit(), within(1e-12));
    assertThat(mean.scale().uncertainty())
        .isCloseTo(only.plateScale().uncertainty(), within(1e-12));
    assertThat(mean.birgeRatio()).isEmpty();
    assertThat(mean.agreementProbability()).isEmpty();
    assertThat(mean.calibrationCount()).isEqualTo(1);
  }

  /**
   * By hand. One sheet, one tape, four calibrations of equal weight: 1099, 1101, 1100, 1100 px,
   * each to a thousandth. Mean length (geometric) 1099.9998 px; 1225.2093 / 1099.9998 = 1.1138269
   * arcsec/px. Independent 1e-3 / sqrt 4 = 5.0e-4; common stays 6.4426e-4; together 8.1551e-4.
   */
  @Test
  void workedExampleOfOneSheet() {
    MeanScale mean =
        ScaleAverage.of(
            List.of(
                on(SHEET, 1099, 1.099),
                on(SHEET, 1101, 1.101),
                on(SHEET, 1100, 1.1),
                on(SHEET, 1100, 1.1)));
    PlateScale scale = mean.scale();
    assertThat(scale.arcsecPerUnit()).isCloseTo(1.1138269, within(1e-7));
    assertThat(scale.independentUncertainty() / scale.arcsecPerUnit())
        .isCloseTo(5.0e-4, within(1e-9));
    assertThat(scale.commonUncertainty() / scale.arcsecPerUnit())
        .isCloseTo(6.4426e-4, within(1e-8));
    assertThat(scale.relativeUncertainty()).isCloseTo(8.1551e-4, within(1e-8));
    // chi-squared = 2 (1/1100)^2 / (1e-3^2 + 4e-4^2) = 1.42492; over 3, root: 0.68919.
    assertThat(mean.birgeRatio().orElseThrow()).isCloseTo(0.68919, within(2e-5));
  }

  /**
   * By hand. Two sheets and two tapes, one calibration each, 1e-3 from pixels; the second sheet and
   * tape four times as uncertain. Shares by 1 / (1e-6 + 4.1507e-7) and 1 / (1e-6 + 6.6412e-6):
   * 0.70668 and 0.13087, so weights 0.84375 and 0.15625. Independent: 1e-3 sqrt(0.84375^2 +
   * 0.15625^2) = 8.5809e-4; common: sqrt((0.84375 * 6.4426e-4)^2 + (0.15625 * 2.57706e-3)^2) =
   * 6.7649e-4.
   */
  @Test
  void workedExampleOfTwoSheets() {
    Target rough = new Target(297, 0.6, 50, 0.08);
    PlateScale scale = ScaleAverage.of(List.of(on(SHEET, 1100, 1.1), on(rough, 1100, 1.1))).scale();
    assertThat(scale.independentUncertainty() / scale.arcsecPerUnit())
        .isCloseTo(8.5809e-4, within(2e-8));
    assertThat(scale.commonUncertainty() / scale.arcsecPerUnit())
        .isCloseTo(6.7649e-4, within(2e-8));
  }

  @Test
  void meanLiesBetweenItsValuesWhereGeneralisedLeastSquaresWouldNot() {
    // Peelle's puzzle: 1.5 and 1.0, 10 percent each of their own, 20 percent in common; least
    // squares with the covariance of the measured values answers 0.88.
    Target vague = new Target(297, 59.4, 50, 0);
    double angle = vague.angleArcsec();
    MeanScale mean =
        ScaleAverage.of(List.of(on(vague, angle / 1.5, angle / 15), on(vague, angle, angle / 10)));
    assertThat(mean.scale().arcsecPerUnit()).isCloseTo(Math.sqrt(1.5), within(1e-9));
  }

  @Test
  void aBetterCalibrationWeighsMore() {
    PlateScale scale =
        ScaleAverage.of(List.of(on(SHEET, 1100, 1), on(SHEET, 1110, 3.027272727))).scale();
    // Relative uncertainties 1 : 3, weights 9 : 1.
    double log = 0.9 * Math.log(1100) + 0.1 * Math.log(1110);
    assertThat(scale.arcsecPerUnit()).isCloseTo(SHEET.angleArcsec() / Math.exp(log), within(1e-9));
  }

  @Test
  void birgeRatioTellsAWrongDistance() {
    // A sheet at 49 m logged as 50 m reads 2 percent more pixels.
    List<Calibration> calibrations =
        List.of(on(SHEET, 1100, 1.1), on(SHEET, 1101, 1.1), on(SHEET, 1122.4, 1.1));
    MeanScale mean = ScaleAverage.of(calibrations);
    assertThat(mean.birgeRatio().orElseThrow()).isGreaterThan(8);
    assertThat(mean.agreementProbability().orElseThrow()).isLessThan(1e-20);
  }

  @Test
  void agreementOfTwoIsTheNormalTail() {
    // Chi-squared with 1 degree of freedom: two values apart by sqrt 2 standard uncertainties of
    // their own give 1, and P(chi-squared > 1) = 0.3173 (two-sided 1 sigma, any normal table).
    StarPair stars = new StarPair(30, 0);
    MeanScale mean =
        ScaleAverage.of(
            List.of(on(stars, 1000, 1), on(stars, 1000 * Math.exp(1e-3 * Math.sqrt(2)), 1.00141)));
    assertThat(mean.birgeRatio().orElseThrow()).isCloseTo(1, within(1e-5));
    assertThat(mean.agreementProbability().orElseThrow()).isCloseTo(0.3173, within(1e-4));
  }

  @Test
  void refusesNothingAndTwoUnits() {
    assertThatThrownBy(() -> ScaleAverage.of(Collections.emptyList()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("1 or more");
    Calibration ruler = new Calibration(SHEET, new ImageLength(70, 0.3, LengthUnit.MILLIMETRE));
    assertThatThrownBy(() -> ScaleAverage.of(List.of(on(SHEET, 1100, 1.1), ruler)))
        .hasMessageContaining("one unit");
  }

  private static Calibration on(Reference reference, double px, double uncertaintyPx) {
    return new Calibration(reference, new ImageLength(px, uncertaintyPx, LengthUnit.PIXEL));
  }
}

package org.limbspan.scale;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

class CalibrationTest {

  /**
   * By hand. A sheet of 297 mm (0.15 mm) at 50 m (20 mm), measured 1100 px (1.1 px):
   *
   * <pre>
   * x = 0.297 / 100 = 0.00297; angle = 2 atan x = 0.0059399825 rad = 1225.2093 arcsec
   *   (206264.806 * (0.00594 - 2 * 0.00297^3 / 3) = 1225.21295 - 0.00360)
   * scale = 1225.2093 / 1100 = 1.1138267 arcsec/px
   * independent: 1.1 / 1100 = 1.0000e-3                 -> 0.00111383 arcsec/px
   * common: 0.15 / 297 = 5.0505e-4, 0.020 / 50 = 4.0e-4, in quadrature 6.4426e-4
   *                                                     -> 0.00071759 arcsec/px
   * together: 1.18956e-3                                -> 0.00132496 arcsec/px
   * </pre>
   */
  @Test
  void workedExampleOfASheet() {
    PlateScale scale = sheet(1100, 1.1).plateScale();
    assertThat(scale.arcsecPerUnit()).isCloseTo(1.1138267, within(1e-7));
    assertThat(scale.independentUncertainty()).isCloseTo(0.00111383, within(1e-8));
    assertThat(scale.commonUncertainty()).isCloseTo(0.00071759, within(2e-8));
    assertThat(scale.uncertainty()).isCloseTo(0.00132496, within(2e-8));
    assertThat(scale.relativeUncertainty()).isCloseTo(1.18956e-3, within(1e-8));
    assertThat(scale.unit()).isEqualTo(LengthUnit.PIXEL);
  }

  /**
   * By hand. Two stars 30 arcmin apart (0.003 arcmin), 1500 px (0.6 px): 1800 / 1500 = 1.2
   * arcsec/px; independent 4e-4, common 1e-4 of it.
   */
  @Test
  void workedExampleOfAStarPair() {
    Calibration calibration =
        new Calibration(new StarPair(30, 0.003), new ImageLength(1500, 0.6, LengthUnit.PIXEL));
    PlateScale scale = calibration.plateScale();
    assertThat(scale.arcsecPerUnit()).isCloseTo(1.2, within(1e-12));
    assertThat(scale.independentUncertainty()).isCloseTo(4.8e-4, within(1e-12));
    assertThat(scale.commonUncertainty()).isCloseTo(1.2e-4, within(1e-12));
  }

  @Test
  void rulerOnAScreenGivesArcsecondsInAMillimetre() {
    // The same sheet, 74.25 mm on a screen: 1225.2093 / 74.25 = 16.501135 arcsec/mm.
    Calibration calibration =
        new Calibration(
            new Target(297, 0.15, 50, 0.02), new ImageLength(74.25, 0.3, LengthUnit.MILLIMETRE));
    assertThat(calibration.plateScale().arcsecPerUnit()).isCloseTo(16.501135, within(2e-6));
    assertThat(calibration.plateScale().arcmin(113)).isCloseTo(31.077, within(0.001));
  }

  @Test
  void uncertaintyOfTheAngleFollowsItsExactDerivative() {
    // A target so wide that the small-angle sensitivity (1) is wrong by more than a third.
    Target wide = new Target(10_000, 10, 5, 0.005);
    double step = 1e-4;
    double slope =
        (new Target(10_000 * (1 + step), 10, 5, 0.005).angleArcsec()
                - new Target(10_000 * (1 - step), 10, 5, 0.005).angleArcsec())
            / (2 * step)
            / wide.angleArcsec();
    assertThat(wide.sharedErrors().get(0).relativeUncertainty())
        .isCloseTo(slope * 1e-3, Percentage.withPercentage(0.001));
    assertThat(slope).isLessThan(0.65);
  }

  @Test
  void centredDiscThroughARectilinearLensIsExactToFourMillionths() {
    // f tan a: what the scale of a 0.34 degree sheet says of a 0.52 degree disc.
    double focalPx = 185_000;
    double sheetPx = 2 * focalPx * Math.tan(Math.toRadians(0.3403 / 2));
    double discPx = 2 * focalPx * Math.tan(Math.toRadians(0.52 / 2));
    double said = 0.3403 * discPx / sheetPx;
    assertThat(said / 0.52 - 1).isBetween(3.5e-6, 4.5e-6);
  }

  @Test
  void refusesWhatCannotBeMeasured() {
    assertThatThrownBy(() -> new ImageLength(0, 1, LengthUnit.PIXEL))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("length 0.0 px");
    assertThatThrownBy(() -> new ImageLength(Double.NaN, 1, LengthUnit.PIXEL))
        .hasMessageContaining("NaN");
    assertThatThrownBy(() -> new ImageLength(100, 0, LengthUnit.PIXEL))
        .hasMessageContaining("uncertainty 0.0");
    assertThatThrownBy(() -> new ImageLength(100, 100, LengthUnit.MILLIMETRE))
        .hasMessageContaining("below 100.0");
    assertThatThrownBy(() -> new Target(0, 0, 50, 0)).hasMessageContaining("lengthMm 0.0");
    assertThatThrownBy(() -> new Target(297, -1, 50, 0)).hasMessageContaining("-1.0");
    assertThatThrownBy(() -> new Target(297, 1, Double.POSITIVE_INFINITY, 0))
        .hasMessageContaining("distanceM");
    assertThatThrownBy(() -> new Target(297, 1, 50, Double.NaN))
        .hasMessageContaining("distanceUncertaintyM NaN");
    assertThatThrownBy(() -> new StarPair(10_800, 1)).hasMessageContaining("below 10800");
    assertThatThrownBy(() -> new StarPair(30, 30)).hasMessageContaining("below 30");
  }

  private static Calibration sheet(double px, double uncertaintyPx) {
    return new Calibration(
        new Target(297, 0.15, 50, 0.02), new ImageLength(px, uncertaintyPx, LengthUnit.PIXEL));
  }
}

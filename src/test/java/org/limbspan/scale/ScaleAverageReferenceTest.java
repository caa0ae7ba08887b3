package org.limbspan.scale;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The worked arithmetic of the GUM, put to plate scales. */
class ScaleAverageReferenceTest {

  /**
   * JCGM 100:2008, 5.2.2, example: ten resistors of nominally 1000 ohm, each calibrated against one
   * standard of 1000 ohm with a standard uncertainty of 100 milliohm and a negligible uncertainty
   * of comparison, joined in series: 10 kilohm with 1 ohm, not with 0.32 ohm. Relative: 1e-4 in
   * common stays 1e-4 in the mean of ten; taken as independent it would be 3.2e-5.
   */
  @Test
  void whatTenComparisonsShareIsNotAveragedAway() {
    StarPair standard = new StarPair(1000.0 / 60, 0.1 / 60);
    List<Calibration> ten = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      ten.add(new Calibration(standard, new ImageLength(1000, 1e-6, LengthUnit.PIXEL)));
    }
    PlateScale scale = ScaleAverage.of(ten).scale();
    assertThat(scale.arcsecPerUnit()).isCloseTo(1, within(1e-12));
    assertThat(scale.uncertainty() * 10_000).isCloseTo(1, within(1e-6));
  }

  /**
   * JCGM 100:2008, 4.2.3, equation (5): the variance of the mean of n independent values is that of
   * one over n.
   */
  @Test
  void whatIsIndependentIsAveraged() {
    List<Calibration> sixteen = new ArrayList<>();
    for (int i = 0; i < 16; i++) {
      sixteen.add(new Calibration(new StarPair(20, 0), new ImageLength(1000, 4, LengthUnit.PIXEL)));
    }
    PlateScale scale = ScaleAverage.of(sixteen).scale();
    assertThat(scale.relativeUncertainty()).isCloseTo(1e-3, within(1e-12));
    assertThat(scale.commonUncertainty()).isZero();
  }

  /**
   * JCGM 100:2008, 5.1.6, equation (12): relative uncertainties of a quotient add in quadrature;
   * 3e-3 and 4e-3 make 5e-3.
   */
  @Test
  void relativeUncertaintiesOfAQuotientAddInQuadrature() {
    Calibration calibration =
        new Calibration(new StarPair(20, 0.06), new ImageLength(1000, 4, LengthUnit.PIXEL));
    assertThat(calibration.plateScale().relativeUncertainty()).isCloseTo(5e-3, within(1e-12));
  }
}

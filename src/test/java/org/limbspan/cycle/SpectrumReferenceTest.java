package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/**
 * Three years of an independent simulator (reference/readings/README.md), nothing told beforehand:
 * the periods of the theory of the Moon must come out. Their values follow from the mean rates in
 * Meeus, Astronomical Algorithms, 2nd ed., ch. 47 (from memory): anomalistic month 27.55455 d,
 * evection 1/(2/29.530589 - 1/27.55455), variation half of 29.530589 d, half the anomalistic month.
 */
class SpectrumReferenceTest {

  private static final double ANOMALISTIC_DAYS = 27.55455;
  private static final double SYNODIC_DAYS = 29.530589;
  private static final double[] PERIODS_DAYS = {
    ANOMALISTIC_DAYS,
    1 / (2 / SYNODIC_DAYS - 1 / ANOMALISTIC_DAYS),
    SYNODIC_DAYS / 2,
    ANOMALISTIC_DAYS / 2
  };

  @Test
  void findsTheInequalitiesOfTheMoon() {
    RigFixture rig = RigFixture.of("clean-triples-3y");
    Spectrum spectrum =
        SpectrumEstimator.estimate(rig.observations(), rig.site(), AltitudeSource.COMPUTED)
            .orElseThrow();
    assertThat(spectrum.lines()).hasSizeGreaterThanOrEqualTo(PERIODS_DAYS.length);
    for (int k = 0; k < PERIODS_DAYS.length; k++) {
      Estimate period = spectrum.lines().get(k).periodDays();
      assertThat(Math.abs(period.sigmasFrom(PERIODS_DAYS[k]))).as("line %d", k).isLessThan(3);
    }
    assertThat(spectrum.lines().get(0).periodDays().uncertainty()).isLessThan(0.001);
    assertThat(Math.abs(spectrum.lines().get(0).amplitude().sigmasFrom(0.05442))).isLessThan(3);
    assertThat(Math.abs(spectrum.distance().parallax().sigmasFrom(1 / 60.267))).isLessThan(3);
  }

  @Test
  void givesNoAnswerToAFewMonths() {
    RigSimulator rig = new RigSimulator(3);
    assertThat(SpectrumEstimator.estimate(rig.pairs(0.5), rig.site(), AltitudeSource.COMPUTED))
        .isEmpty();
  }
}

package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How well the flattening is known where the night's air is not: rays through other airs. */
class FlatteningDoubtReferenceTest {

  private static final Atmosphere MEAN = new Atmosphere(1010, 10);

  /** ERFA's notes to refco, by another program's ray tracing: 1005 hPa, 280.15 K, 0.574 um. */
  @ParameterizedTest
  @CsvSource({"10, 10.27", "40, 48.82", "60, 100.51", "74, 200.35", "80, 319.13"})
  void tracesRaysAsAnotherProgramDoes(double zenithDistanceDeg, double arcsec) {
    LayeredAir air = LayeredAir.mean(new Atmosphere(1005, 7.15));
    assertThat(60 * air.refractionArcmin(90 - zenithDistanceDeg))
        .isCloseTo(arcsec, within(0.01 * arcsec));
  }

  /** C. W. Allen, Astrophysical Quantities (1976), p. 125, 10 degrees C, 101.3 kPa. */
  @ParameterizedTest
  @CsvSource({"10, 5.3, 0.06", "5, 9.9, 0.1", "2, 18.4, 0.3"})
  void tracesRaysNearTheHorizon(double apparentDeg, double arcmin, double toleranceArcmin) {
    LayeredAir air = LayeredAir.mean(new Atmosphere(1013, 10));
    assertThat(air.refractionArcmin(apparentDeg)).isCloseTo(arcmin, within(toleranceArcmin));
  }

  /**
   * The doubt is what the formula and four causes make together, root sum of squares. The sizes of
   * the causes are common practice, no source.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.7, 0.8, 1, 1.5, 2, 3, 4, 5, 7, 10, 20, 40})
  void isWhatOtherAirsMakeOfTheFlattening(double apparentDeg) {
    double mean = LayeredAir.mean(MEAN).flattening(apparentDeg);
    double formula = 1 - factor(apparentDeg);
    double all =
        Math.sqrt(
            Math.pow(formula / mean - 1, 2)
                + square(mean, apparentDeg, warm(20), warm(0))
                + square(mean, apparentDeg, pressed(1020), pressed(1000))
                + square(mean, apparentDeg, layer(2000, 9.8), layer(2000, 3))
                + square(mean, apparentDeg, layer(100, -30), layer(30, 100)));
    assertThat(Refraction.flatteningDoubt(apparentDeg) / all).isBetween(0.8, 1.25);
  }

  @Test
  void isAskedOfAMoonThatHasRisen() {
    assertThatThrownBy(() -> Refraction.flatteningDoubt(0.5))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("apparentAltitudeDeg 0.5: expected 0.7 to 90");
  }

  private static double factor(double apparentDeg) {
    double trueDeg = apparentDeg;
    for (int i = 0; i < 20; i++) {
      trueDeg += apparentDeg - Refraction.apparentAltitudeDeg(trueDeg, MEAN);
    }
    return Refraction.verticalFactor(trueDeg, 31, MEAN);
  }

  private static double square(double mean, double apparentDeg, LayeredAir one, LayeredAir other) {
    double a = one.flattening(apparentDeg) / mean - 1;
    double b = other.flattening(apparentDeg) / mean - 1;
    return (a * a + b * b) / 2;
  }

  private static LayeredAir warm(double temperatureC) {
    return LayeredAir.mean(new Atmosphere(MEAN.pressureHPa(), temperatureC));
  }

  private static LayeredAir pressed(double pressureHPa) {
    return LayeredAir.mean(new Atmosphere(pressureHPa, MEAN.temperatureC()));
  }

  private static LayeredAir layer(double layerM, double lapseKPerKm) {
    return LayeredAir.layered(MEAN, layerM, lapseKPerKm);
  }
}

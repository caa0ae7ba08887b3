package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Refraction and the flattened disc against handbooks. */
class RefractionReferenceTest {

  private static final Atmosphere TABLE_AIR = new Atmosphere(1010, 10);

  /**
   * J. Meeus, Astronomical Algorithms (2nd ed. 1998), example 16.a: apparent altitude 0 30' is
   * lifted by 28.754'; true altitude 33.246' by 24.618'; so a Sun of 32' stands 27.864' high.
   */
  @Test
  void agreesWithMeeusExample16a() {
    assertThat(Refraction.atApparentAltitudeArcmin(0.5, TABLE_AIR)).isCloseTo(28.754, within(5e-4));
    assertThat(Refraction.atTrueAltitudeArcmin(33.246 / 60, TABLE_AIR))
        .isCloseTo(24.618, within(5e-4));
  }

  /**
   * The flattened Sun of the same example: lower limb at 1.246', upper at 33.246', 27.864' from
   * limb to limb. He takes Bennett for the lower limb; Saemundsson puts that limb 0.17' lower.
   */
  @Test
  void flattensTheSunOfMeeusExample16a() {
    double contraction = 1 - Refraction.horizontalContraction(TABLE_AIR);
    double verticalArcmin =
        32 * Refraction.verticalFactor(17.246 / 60, 32, TABLE_AIR) * contraction;
    assertThat(verticalArcmin).isCloseTo(27.864, within(0.2));
  }

  /**
   * C. W. Allen, Astrophysical Quantities (1976), p. 125, for 10 degrees C and 101.3 kPa, as quoted
   * by Wikipedia; apparent altitudes. Bennett's formula is stated to hold to 0.07' high up; the
   * table's horizon is 0.9' above it.
   */
  @ParameterizedTest
  @CsvSource({"10, 5.3, 0.15", "5, 9.9, 0.1", "2, 18.4, 0.2", "0, 35.4, 1.0"})
  void agreesWithAllensTable(double apparentDeg, double arcmin, double toleranceArcmin) {
    assertThat(Refraction.atApparentAltitudeArcmin(apparentDeg, new Atmosphere(1013, 10)))
        .isCloseTo(arcmin, within(toleranceArcmin));
  }

  /**
   * Ray tracing in the notes to ERFA's refco (1005 hPa, 280.15 K, 0.574 um): zenith distance as
   * seen, refraction in arcseconds. Bennett's and Saemundsson's formulas are 2 to 5 percent above
   * it.
   */
  @ParameterizedTest
  @CsvSource({
    "10, 10.27",
    "20, 21.19",
    "30, 33.61",
    "40, 48.82",
    "50, 69.28",
    "60, 100.51",
    "65, 124.23",
    "70, 158.63",
    "74, 200.35",
    "78, 267.44",
    "80, 319.13"
  })
  void staysNearRayTracing(double zenithDistanceDeg, double arcsec) {
    Atmosphere air = new Atmosphere(1005, 7);
    double apparentDeg = 90 - zenithDistanceDeg;
    double bennett = 60 * Refraction.atApparentAltitudeArcmin(apparentDeg, air);
    double saemundsson = 60 * Refraction.atTrueAltitudeArcmin(apparentDeg - arcsec / 3600, air);
    assertThat(bennett).isCloseTo(arcsec, within(0.055 * arcsec));
    assertThat(saemundsson).isCloseTo(arcsec, within(0.055 * arcsec));
  }

  /**
   * The same ray tracing: 10.27" at 10 degrees from the zenith is 10.27" / tan 10 deg = 58.2" a
   * radian, so 0.000282 for 1005 hPa and 7 degrees C. P. Hirose (NavList): 0.26 to 0.28 arcseconds
   * a semidiameter of some 950, at any altitude, is 0.00027 to 0.00030.
   */
  @Test
  void contractsTheHorizontalDiameterByThreeHundredthsOfAPercent() {
    assertThat(Refraction.horizontalContraction(new Atmosphere(1005, 7)))
        .isCloseTo(10.27 / Math.tan(Math.toRadians(10)) / 206265, within(2e-5))
        .isBetween(0.00027, 0.00030);
  }

  /**
   * Computed from Saemundsson's formula by an independent program: true disc of 31', 1010 hPa, 10
   * C.
   */
  @ParameterizedTest
  @CsvSource({
    "-0.3, 0.229, 0.8410", "0, 0.483, 0.8549", "0.5, 0.917, 0.8797", "1, 1.362, 0.9020",
    "2, 2.282, 0.9346", "3, 3.228, 0.9548", "5, 5.161, 0.9757", "8, 8.110, 0.9880",
    "10, 10.090, 0.9917", "15, 15.061, 0.9960", "20, 20.046, 0.9976", "30, 30.029, 0.9988",
    "45, 45.017, 0.9994", "60, 60.010, 0.9996"
  })
  void agreesWithAnIndependentComputation(double trueDeg, double apparentDeg, double ratio) {
    double contraction = 1 - Refraction.horizontalContraction(TABLE_AIR);
    assertThat(Refraction.apparentAltitudeDeg(trueDeg, TABLE_AIR))
        .isCloseTo(apparentDeg, within(6e-4));
    assertThat(Refraction.verticalFactor(trueDeg, 31, TABLE_AIR) * contraction)
        .isCloseTo(ratio, within(6e-5));
  }

  /** A setting Sun is flattened by about a sixth (Wikipedia after Allen): 0.83. */
  @Test
  void flattensTheSettingSunByASixth() {
    assertThat(Refraction.verticalFactor(-0.3, 32, new Atmosphere(1013, 10)))
        .isCloseTo(0.83, within(0.015));
  }

  /** Bennett and Saemundsson invert each other to 0.1' (Meeus, ch. 16). */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.5, 1, 2, 5, 10, 20, 40, 60, 80})
  void bothFormulasInvertEachOther(double apparentDeg) {
    double trueDeg = apparentDeg - Refraction.atApparentAltitudeArcmin(apparentDeg, TABLE_AIR) / 60;
    assertThat(60 * (Refraction.apparentAltitudeDeg(trueDeg, TABLE_AIR) - apparentDeg))
        .isCloseTo(0, within(0.1));
  }
}

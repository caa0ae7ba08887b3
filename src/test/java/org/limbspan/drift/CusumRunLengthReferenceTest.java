package org.limbspan.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The bench's known limit against published run lengths. */
class CusumRunLengthReferenceTest {

  /**
   * D. C. Montgomery, Introduction to Statistical Quality Control, two-sided CUSUM with k = 0.5, as
   * quoted in {@code reference/published/control-charts.json}; half a unit of the last digit.
   */
  @ParameterizedTest
  @CsvSource({"5, 0, 465, 0.5", "5, 1, 10.4, 0.05", "4, 1, 8.38, 0.005"})
  void agreesWithMontgomery(double h, double shift, double published, double tolerance) {
    assertThat(new CusumRunLength(0.5, h).twoSided(shift)).isCloseTo(published, within(tolerance));
  }

  /**
   * The integral equation, solved by an independent program, in {@code
   * reference/published/computed-checks.txt}: k = 0.5, two-sided.
   */
  @ParameterizedTest
  @CsvSource({
    "4, 0,    167.68",
    "4, 0.25, 74.22",
    "4, 0.5,  26.63",
    "4, 2, 3.34",
    "4, 4, 1.71",
    "5, 0.25, 139.49",
    "5, 0.75, 17.05",
    "5, 1.5,  5.75",
    "5, 3, 2.57"
  })
  void agreesWithTheIntegralEquation(double h, double shift, double expected) {
    assertThat(new CusumRunLength(0.5, h).twoSided(shift))
        .isCloseTo(expected, within(0.006 + 5e-4 * expected));
  }

  /** The same file: one-sided, 335.37 and 930.89 where nothing shifts. */
  @Test
  void agreesOnOneSide() {
    assertThat(new CusumRunLength(0.5, 4).oneSided(0)).isCloseTo(335.37, within(0.2));
    assertThat(new CusumRunLength(0.5, 5).oneSided(0)).isCloseTo(930.89, within(0.5));
  }

  @Test
  void findsTheLimitForARunLength() {
    assertThat(CusumRunLength.forShift(1, 465.44).twoSided(1)).isCloseTo(10.38, within(0.01));
  }
}

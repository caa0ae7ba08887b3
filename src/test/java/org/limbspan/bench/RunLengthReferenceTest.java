package org.limbspan.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RunLengthReferenceTest {

  /**
   * Two-sided CUSUM with k = 0.5. Source: D. C. Montgomery, Introduction to Statistical Quality
   * Control: 465 and 10.4 for h = 5, 8.38 for h = 4 (quoted by public test suites); the others by
   * an integral equation, with the tolerance of the cells.
   */
  @ParameterizedTest
  @CsvSource({
    "5, 0, 465.44, 0.5",
    "5, 1, 10.38, 0.02",
    "4, 1, 8.38, 0.01",
    "4, 0, 167.68, 0.2",
    "4, 0.5, 26.63, 0.05",
    "5, 2, 4.01, 0.01",
    "5, 4, 2.01, 0.01",
  })
  void agreesWithPublishedRunLengthsOfTheCusum(
      double limit, double shift, double published, double tolerance) {
    assertThat(RunLength.twoSidedCusum(0.5, limit, shift)).isCloseTo(published, within(tolerance));
  }

  /**
   * Source: J. M. Lucas and M. S. Saccucci, Technometrics 32, 1 (1990), table 3, as quoted by the
   * CRAN package spc; half a unit of the last digit printed.
   */
  @ParameterizedTest
  @CsvSource({
    "0.5, 3.071, 0.25, 255, 0.5",
    "0.5, 3.071, 1, 17.5, 0.05",
    "0.5, 3.071, 2, 3.63, 0.005",
    "0.5, 3.071, 3, 1.93, 0.005",
    "0.03, 2.437, 0.5, 29.3, 0.05",
    "0.03, 2.437, 1, 12.6, 0.05",
    "0.03, 2.437, 2, 5.99, 0.005",
    "0.03, 2.437, 4, 3.11, 0.005",
  })
  void agreesWithPublishedRunLengthsOfTheEwma(
      double weight, double factor, double shift, double published, double tolerance) {
    assertThat(RunLength.ewma(weight, factor, shift)).isCloseTo(published, within(tolerance));
  }
}

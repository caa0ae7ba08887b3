package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;

class SampleSizeReferenceTest {

  /**
   * NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.2.2: N = ((z(1 - alpha/2) + z(1 -
   * beta))/delta)^2 with the departure in units of the standard deviation; for alpha 0.05
   * two-sided, beta 0.10 and a departure of one, 10.5, rounded up to 11 (the handbook's text, from
   * memory).
   */
  @Test
  void oneStandardDeviationNeedsElevenReadings() {
    assertThat(SampleSize.moreToFind(1, 1, 1, 0.05, 0.90)).isEqualTo(11 - 1);
  }

  @Test
  void halfTheUncertaintyTakesFourTimesAsMany() {
    assertThat(SampleSize.moreFor(30, 0.02, 0.01)).isEqualTo(90);
  }

  @Test
  void enoughIsEnough() {
    assertThat(SampleSize.moreFor(30, 0.02, 0.02)).isZero();
    assertThat(SampleSize.moreFor(30, 0.02, 0.5)).isZero();
    assertThat(SampleSize.moreToFind(30, 0.02, 1, 0.01, 0.9)).isZero();
  }

  @Test
  void refusesNothingToGoBy() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SampleSize.moreFor(0, 0.02, 0.01))
        .withMessageContaining("have 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SampleSize.moreToFind(3, 0.02, 0.01, 0, 0.9))
        .withMessageContaining("falseAlarm 0.0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SampleSize.moreFor(3, Double.NaN, 0.01))
        .withMessageContaining("uncertainty NaN");
  }
}

package org.limbspan.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BackoffTest {

  private static final Instant DUE = Instant.parse("2026-05-10T12:00:00Z");

  @ParameterizedTest
  @CsvSource({"1, PT1M", "2, PT5M", "3, PT25M", "4, PT2H5M", "5, PT6H", "6, PT6H", "99, PT6H"})
  void waitsLongerAndLongerUpToSixHours(int attempts, Duration delay) {
    assertThat(Backoff.next(DUE, attempts, DUE)).hasValue(DUE.plus(delay));
  }

  @Test
  void givesUpAfterThreeDaysAndFiveAttempts() {
    Instant late = DUE.plus(Backoff.PATIENCE);
    assertThat(Backoff.next(late, 5, DUE)).isEmpty();
    assertThat(Backoff.next(late.minusSeconds(1), 5, DUE)).isPresent();
  }

  @Test
  void doesNotGiveUpBecauseTheServiceWasOff() {
    assertThat(Backoff.next(DUE.plus(Duration.ofDays(30)), 4, DUE)).isPresent();
  }
}

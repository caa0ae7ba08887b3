package org.limbspan.platform.jobs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Random;
import org.junit.jupiter.api.Test;

class JobTimesTest {

  private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
  private static final LocalTime THREE = LocalTime.of(3, 0);

  @Test
  void isDueADayLaterOnceItWasDone() {
    JobTimes nightly = JobTimes.daily(THREE, VIENNA, Duration.ZERO, new Random(1));
    assertThat(nightly.next(Instant.parse("2026-01-10T01:59:59Z")))
        .isEqualTo("2026-01-10T02:00:00Z");
    assertThat(nightly.next(Instant.parse("2026-01-10T02:00:00Z")))
        .isEqualTo("2026-01-11T02:00:00Z");
    assertThat(nightly.next(Instant.parse("2026-01-10T23:30:00Z")))
        .isEqualTo("2026-01-11T02:00:00Z");
  }

  /**
   * Changes of clocks in the European Union: last Sundays of March and October, 01:00 UTC
   * (Directive 2000/84/EC, articles 2 and 3).
   */
  @Test
  void keepsToTheClockOnTheWallWhenItIsChanged() {
    JobTimes nightly = JobTimes.daily(THREE, VIENNA, Duration.ZERO, new Random(1));
    assertThat(nightly.next(Instant.parse("2026-03-28T12:00:00Z")))
        .isEqualTo("2026-03-29T01:00:00Z");
    assertThat(nightly.next(Instant.parse("2026-10-24T12:00:00Z")))
        .isEqualTo("2026-10-25T02:00:00Z");
    // 02:30 is left out in March, and comes twice in October
    JobTimes early = JobTimes.daily(LocalTime.of(2, 30), VIENNA, Duration.ZERO, new Random(1));
    assertThat(early.next(Instant.parse("2026-03-28T12:00:00Z"))).isEqualTo("2026-03-29T01:30:00Z");
    assertThat(early.next(Instant.parse("2026-10-24T12:00:00Z"))).isEqualTo("2026-10-25T00:30:00Z");
    assertThat(early.next(Instant.parse("2026-10-25T00:31:00Z"))).isEqualTo("2026-10-26T01:30:00Z");
  }

  @Test
  void spreadsItOverTheSpanAndNotBeyond() {
    Instant evening = Instant.parse("2026-01-09T20:00:00Z");
    Instant three = Instant.parse("2026-01-10T02:00:00Z");
    Duration span = Duration.ofMinutes(20);
    JobTimes nightly = JobTimes.daily(THREE, VIENNA, span, new Random(20_261_127));
    int late = 0;
    for (int i = 0; i < 1000; i++) {
      Instant next = nightly.next(evening);
      assertThat(next).isBetween(three, three.plus(span));
      late += next.isAfter(three.plus(span.dividedBy(2))) ? 1 : 0;
      assertThat(nightly.next(next)).isAfterOrEqualTo("2026-01-11T02:00:00Z");
    }
    // a fair coin 1000 times: mean 500, standard deviation 16
    assertThat(late).isBetween(420, 580);
  }

  @Test
  void refusesPausesAndSpreadsThatMakeNoSense() {
    assertThatThrownBy(() -> JobTimes.every(Duration.ZERO)).hasMessageContaining("more than 0 s");
    assertThatThrownBy(() -> JobTimes.daily(THREE, VIENNA, Duration.ofHours(13), new Random(1)))
        .hasMessageContaining("from 0 h to 12 h");
    assertThatThrownBy(() -> new Job("Copy now", JobTimes.every(Duration.ofHours(1)), s -> {}))
        .hasMessageContaining("joined by hyphens");
  }
}

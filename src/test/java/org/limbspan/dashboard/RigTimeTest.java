package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Times as people type them. Clocks of Vienna stand at +01:00, in summer at +02:00; they are put
 * forward and back at 01:00 UTC of the last Sunday of March and October (Directive 2000/84/EC).
 */
class RigTimeTest {

  private static final RigTime VIENNA = new RigTime(ZoneId.of("Europe/Vienna"));

  @ParameterizedTest
  @CsvSource({
    "2024-06-20 13:02, 2024-06-20T11:02:00Z",
    "2024-01-20T13:02, 2024-01-20T12:02:00Z",
    "2024-06-20, 2024-06-20T10:00:00Z",
    "2024-06-20 13:02 +05:30, 2024-06-20T07:32:00Z",
    "2024-06-20 13:02-03:00, 2024-06-20T16:02:00Z",
    "2024-06-20T13:02Z, 2024-06-20T13:02:00Z"
  })
  void isOfTheRigsTimeZoneUnlessAnOffsetIsTyped(String typed, Instant meant) {
    assertThat(VIENNA.instant(typed)).hasValue(meant);
    assertThat(VIENNA.doubt(typed)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "noon", "2024-02-30 12:00", "2024-06-20 25:00", "2024-06-20 13:02 Vienna"})
  void takesNothingElseForATime(String typed) {
    assertThat(VIENNA.instant(typed)).isEmpty();
    assertThat(VIENNA.doubt(typed)).isEmpty();
  }

  @Test
  void tellsADayAloneFromATimeOfIt() {
    assertThat(RigTime.isDay(" 2024-06-20 ")).isTrue();
    assertThat(RigTime.isDay("2024-06-20 13:02")).isFalse();
    assertThat(RigTime.isDay("2024-06-31")).isFalse();
    assertThat(RigTime.isDay("")).isFalse();
  }

  @Test
  void asksForTheOffsetWhereTheClockShowsATimeTwice() {
    assertThat(VIENNA.doubt("2026-10-25 02:30").orElseThrow())
        .contains("twice", "2026-10-25 02:30 +02:00 or 2026-10-25 02:30 +01:00.");
    assertThat(VIENNA.doubt("2026-10-25 02:30 +01:00")).isEmpty();
    assertThat(VIENNA.instant("2026-10-25 02:30 +01:00"))
        .hasValue(Instant.parse("2026-10-25T01:30:00Z"));
  }

  @Test
  void namesADayOnceIfNothingLiesOutsideIt() {
    Instant midnight = Instant.parse("2026-10-22T22:00:00Z");
    assertThat(VIENNA.days(midnight, midnight.plusSeconds(86_399))).isEqualTo("on 23 October 2026");
    assertThat(VIENNA.days(midnight, midnight.plusSeconds(86_400)))
        .isEqualTo("from 23 October 2026 to 24 October 2026");
  }

  @Test
  void doubtsATimeThatTheClockNeverShows() {
    assertThat(VIENNA.doubt("2026-03-29 02:30").orElseThrow()).contains("set forward");
  }
}

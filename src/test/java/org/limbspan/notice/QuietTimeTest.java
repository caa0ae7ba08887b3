package org.limbspan.notice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Clocks of Berlin change at 01:00 UTC of the last Sundays of March and October (Directive
 * 2000/84/EC): in 2026 on 29 March, when 02:00 to 03:00 is missing, and on 25 October, when 02:00
 * to 03:00 comes twice.
 */
class QuietTimeTest {

  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

  @ParameterizedTest(name = "{0} to {1}, {2} -> {3}: {4}")
  @CsvSource({
    "22:00, 07:00, 2026-05-10T12:00:00Z, 2026-05-10T12:00:00Z, by day",
    "22:00, 07:00, 2026-05-10T19:59:59Z, 2026-05-10T19:59:59Z, a second before it begins",
    "22:00, 07:00, 2026-05-10T20:00:00Z, 2026-05-11T05:00:00Z, when it begins",
    "22:00, 07:00, 2026-05-11T01:00:00Z, 2026-05-11T05:00:00Z, after midnight",
    "22:00, 07:00, 2026-05-11T05:00:00Z, 2026-05-11T05:00:00Z, when it ends",
    "13:00, 15:30, 2026-05-11T12:00:00Z, 2026-05-11T13:30:00Z, within a day",
    "00:00, 06:00, 2026-05-10T22:00:00Z, 2026-05-11T04:00:00Z, from midnight",
    "22:00, 00:00, 2026-05-10T21:59:00Z, 2026-05-10T22:00:00Z, to midnight",
  })
  void endsOnOrdinaryDays(String from, String to, Instant at, Instant expected, String why) {
    assertThat(after(from, to, at)).as(why).isEqualTo(expected);
  }

  @ParameterizedTest(name = "{0} to {1}, {2} -> {3}: {4}")
  @CsvSource({
    "22:00, 07:00, 2026-03-28T21:00:00Z, 2026-03-29T05:00:00Z, the night has eight hours",
    "22:00, 02:30, 2026-03-29T00:30:00Z, 2026-03-29T01:00:00Z, an end that is missing is the leap",
    "22:00, 02:00, 2026-03-29T00:59:59Z, 2026-03-29T01:00:00Z, an end at the leap",
    "02:30, 06:00, 2026-03-29T00:59:59Z, 2026-03-29T00:59:59Z, before a beginning that is missing",
    "02:30, 06:00, 2026-03-29T01:00:00Z, 2026-03-29T04:00:00Z, a beginning that is missing is the leap",
    "02:10, 02:50, 2026-03-29T01:00:00Z, 2026-03-29T01:00:00Z, a quiet time that is missing as a whole",
  })
  void endsWhereAnHourIsMissing(String from, String to, Instant at, Instant expected, String why) {
    assertThat(after(from, to, at)).as(why).isEqualTo(expected);
  }

  @ParameterizedTest(name = "{0} to {1}, {2} -> {3}: {4}")
  @CsvSource({
    "22:00, 07:00, 2026-10-24T20:00:00Z, 2026-10-25T06:00:00Z, the night has ten hours",
    "22:00, 02:30, 2026-10-25T00:10:00Z, 2026-10-25T01:30:00Z, to the last 02:30",
    "22:00, 02:30, 2026-10-25T00:40:00Z, 2026-10-25T01:30:00Z, also after the first 02:30",
    "22:00, 02:30, 2026-10-25T01:30:00Z, 2026-10-25T01:30:00Z, not after the last",
    "02:30, 06:00, 2026-10-25T00:29:59Z, 2026-10-25T00:29:59Z, before the first 02:30",
    "02:30, 06:00, 2026-10-25T00:30:00Z, 2026-10-25T05:00:00Z, from the first 02:30",
    "02:30, 06:00, 2026-10-25T01:10:00Z, 2026-10-25T05:00:00Z, also when it is 02:10 again",
  })
  void endsWhereAnHourComesTwice(String from, String to, Instant at, Instant expected, String why) {
    assertThat(after(from, to, at)).as(why).isEqualTo(expected);
  }

  @Test
  void isNotWithoutLength() {
    LocalTime noon = LocalTime.NOON;
    assertThatThrownBy(() -> new QuietTime(noon, noon))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("12:00");
  }

  private static Instant after(String from, String to, Instant at) {
    return new QuietTime(LocalTime.parse(from), LocalTime.parse(to)).after(at, BERLIN);
  }
}

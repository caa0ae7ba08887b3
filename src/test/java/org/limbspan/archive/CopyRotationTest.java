package org.limbspan.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class CopyRotationTest {

  private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");

  @Test
  void keepsNothingOfNothingAndAlwaysTheNewest() {
    assertThat(CopyRotation.kept(List.of(), VIENNA)).isEmpty();
    Instant only = Instant.parse("2020-02-29T02:03:04Z");
    assertThat(CopyRotation.kept(List.of(only), VIENNA)).containsExactly(only);
  }

  /** Counted by hand on a calendar: 30 November 2026 is a Monday. */
  @Test
  void keepsDaysThenWeeksThenMonthsOfADailyHistory() {
    List<Instant> copies = new ArrayList<>();
    for (LocalDate day = LocalDate.of(2025, 1, 1);
        !day.isAfter(LocalDate.of(2026, 11, 30));
        day = day.plusDays(1)) {
      copies.add(three(day));
    }
    assertThat(days(CopyRotation.kept(copies, VIENNA)))
        .containsExactly(
            // months, the last copy of each
            "2025-12-31",
            "2026-01-31",
            "2026-02-28",
            "2026-03-31",
            "2026-04-30",
            "2026-05-31",
            "2026-06-30",
            "2026-07-31",
            "2026-08-31",
            "2026-09-30",
            "2026-10-31",
            // weeks, their Sundays
            "2026-11-15",
            "2026-11-22",
            // days
            "2026-11-24",
            "2026-11-25",
            "2026-11-26",
            "2026-11-27",
            "2026-11-28",
            "2026-11-29",
            "2026-11-30");
  }

  /** Weeks belong to the year of their Thursday (ISO 8601): 2026 has 53 of them. */
  @Test
  void countsTheWeekAroundNewYearOnce() {
    List<Instant> copies =
        List.of(
            three(LocalDate.of(2026, 12, 31)), // Thursday of week 53
            three(LocalDate.of(2027, 1, 3)), // its Sunday
            three(LocalDate.of(2027, 1, 4)), // Monday of week 1
            three(LocalDate.of(2027, 1, 10)),
            three(LocalDate.of(2027, 1, 17)),
            three(LocalDate.of(2027, 1, 18)),
            three(LocalDate.of(2027, 1, 19)),
            three(LocalDate.of(2027, 1, 20)),
            three(LocalDate.of(2027, 1, 21)),
            three(LocalDate.of(2027, 1, 22)),
            three(LocalDate.of(2027, 1, 23)),
            three(LocalDate.of(2027, 1, 24)));
    assertThat(days(CopyRotation.kept(copies, VIENNA)))
        .containsExactly(
            "2026-12-31", // the last of December
            "2027-01-03", // week 53
            "2027-01-10", // week 1
            "2027-01-17", // week 2
            "2027-01-18",
            "2027-01-19",
            "2027-01-20",
            "2027-01-21",
            "2027-01-22",
            "2027-01-23",
            "2027-01-24");
  }

  @Test
  void takesTheLastOfADayByTheClockOnTheWall() {
    Instant beforeMidnight = Instant.parse("2026-01-10T22:59:59Z");
    Instant atMidnight = Instant.parse("2026-01-10T23:00:00Z");
    Instant later = Instant.parse("2026-01-11T20:00:00Z");
    assertThat(CopyRotation.kept(List.of(beforeMidnight, atMidnight, later), VIENNA))
        .containsExactlyInAnyOrder(beforeMidnight, later);
    assertThat(CopyRotation.kept(List.of(beforeMidnight, atMidnight, later), ZoneId.of("UTC")))
        .containsExactlyInAnyOrder(atMidnight, later);
  }

  @Test
  void losesNothingWhileARigRests() {
    List<Instant> copies =
        List.of(three(LocalDate.of(2018, 5, 1)), three(LocalDate.of(2021, 8, 1)));
    assertThat(CopyRotation.kept(copies, VIENNA)).containsExactlyInAnyOrderElementsOf(copies);
  }

  /** Rotated night by night, the same are left as if all had been looked at once. */
  @Test
  void comesToTheSameNightByNight() {
    Random random = new Random(20_261_127);
    Set<Instant> all = new HashSet<>();
    Set<Instant> left = new HashSet<>();
    Instant night = three(LocalDate.of(2024, 2, 1));
    for (int i = 0; i < 900; i++) {
      night = night.plus(Duration.ofHours(24));
      if (random.nextInt(3) > 0) {
        all.add(night);
        left.add(night);
        left = new HashSet<>(CopyRotation.kept(left, VIENNA));
        assertThat(left).contains(night).hasSizeLessThanOrEqualTo(7 + 4 + 12);
      }
    }
    assertThat(left).isEqualTo(CopyRotation.kept(all, VIENNA));
  }

  private static Instant three(LocalDate day) {
    return day.atTime(LocalTime.of(3, 0)).atZone(VIENNA).toInstant();
  }

  private static Set<String> days(Set<Instant> copies) {
    return copies.stream()
        .map(copy -> copy.atZone(VIENNA).toLocalDate().toString())
        .collect(Collectors.toCollection(TreeSet::new));
  }
}

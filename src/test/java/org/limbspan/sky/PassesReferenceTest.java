package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Every moonrise and moonset of a year against tables of the U.S. Naval Observatory, which use the
 * same convention: upper limb, refraction of 34 arcminutes, to the nearest minute.
 */
class PassesReferenceTest {

  /** Printed to the minute; and the tables assume their own UT1. */
  private static final Duration TOLERANCE = Duration.ofSeconds(45);

  private final Sky sky = SkyFixture.sky();

  /** Southern mid-latitude, 2050; days without a rise or without a set. */
  @Test
  void agreesWithTheTableFor45DegreesSouth() {
    agrees("moonrise-moonset-2050-S45.txt", new Site(-45, 150, 0), 2050);
  }

  /** Beyond the polar circle, 2019; a fortnight up, a fortnight down, two rises on one day. */
  @Test
  void agreesWithTheTableFor80DegreesNorth() {
    agrees("moonrise-moonset-2019-N80.txt", new Site(80, 0, 0), 2019);
  }

  private void agrees(String table, Site site, int year) {
    Instant from = Instant.parse(year + "-01-01T00:00:00Z");
    Instant to = Instant.parse((year + 1) + "-01-01T00:00:00Z");
    List<Pass> passes =
        sky.passes(from.minus(Duration.ofDays(2)), to.plus(Duration.ofDays(2)), site);
    List<Instant> rises = passes.stream().flatMap(pass -> pass.riseAt().stream()).toList();
    List<Instant> sets = passes.stream().flatMap(pass -> pass.setAt().stream()).toList();
    same(within(rises, from, to), events(table, year, 0));
    same(within(sets, from, to), events(table, year, 5));
  }

  private static void same(List<Instant> computed, List<Instant> published) {
    assertThat(published).hasSizeGreaterThan(100);
    assertThat(computed).hasSameSizeAs(published);
    for (int i = 0; i < published.size(); i++) {
      assertThat(Duration.between(computed.get(i), published.get(i)).abs())
          .as("published %s, computed %s", published.get(i), computed.get(i))
          .isLessThan(TOLERANCE);
    }
  }

  private static List<Instant> within(List<Instant> all, Instant from, Instant to) {
    return all.stream().filter(at -> !at.isBefore(from) && at.isBefore(to)).toList();
  }

  /** A row is the day, then for each month rise and set in columns of eleven characters. */
  private static List<Instant> events(String table, int year, int offset) {
    List<Instant> events = new ArrayList<>();
    for (String line : Published.lines(table)) {
      if (line.matches("\\d\\d .*")) {
        for (int month = 1; month <= 12; month++) {
          int at = 4 + 11 * (month - 1) + offset;
          String cell = line.length() >= at + 4 ? line.substring(at, at + 4) : "";
          if (cell.matches("\\d{4}")) {
            events.add(
                LocalDate.of(year, month, Integer.parseInt(line.substring(0, 2)))
                    .atTime(
                        Integer.parseInt(cell.substring(0, 2)), Integer.parseInt(cell.substring(2)))
                    .toInstant(ZoneOffset.UTC));
          }
        }
      }
    }
    return events.stream().sorted().toList();
  }
}

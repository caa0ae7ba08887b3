package org.limbspan.archive;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.temporal.IsoFields;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/**
 * Which copies are kept: the last one of each of the newest 7 days that have one, of the newest 4
 * weeks (ISO 8601, Monday to Sunday), and of the newest 12 months. Days without a copy do not
 * count: a rig that rests for a year loses none of its copies by that.
 */
final class CopyRotation {

  static final int DAYS = 7;
  static final int WEEKS = 4;
  static final int MONTHS = 12;

  private CopyRotation() {}

  /**
   * The copies to keep, never fewer than the newest one of any.
   *
   * @param copies when they were made
   * @param zone in which days begin
   */
  static Set<Instant> kept(Collection<Instant> copies, ZoneId zone) {
    List<Instant> newestFirst = copies.stream().sorted(Comparator.reverseOrder()).toList();
    Set<Instant> kept = new HashSet<>();
    kept.addAll(lastOfEach(newestFirst, DAYS, at -> day(at, zone)));
    kept.addAll(lastOfEach(newestFirst, WEEKS, at -> week(day(at, zone))));
    kept.addAll(lastOfEach(newestFirst, MONTHS, at -> YearMonth.from(day(at, zone))));
    return kept;
  }

  private static Set<Instant> lastOfEach(
      List<Instant> newestFirst, int most, Function<Instant, Object> spanOf) {
    Set<Object> spans = new HashSet<>();
    Set<Instant> kept = new HashSet<>();
    for (Instant copy : newestFirst) {
      Object span = spanOf.apply(copy);
      if (spans.size() < most && spans.add(span)) {
        kept.add(copy);
      }
    }
    return kept;
  }

  private static LocalDate day(Instant at, ZoneId zone) {
    return at.atZone(zone).toLocalDate();
  }

  /** Year and number of the week, which belongs to the year of its Thursday. */
  private static List<Integer> week(LocalDate day) {
    return List.of(day.get(IsoFields.WEEK_BASED_YEAR), day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
  }
}

package org.limbspan.testing;

import java.time.Duration;
import java.time.Instant;

/** Made-up lines of readings, all different in their instant. */
public final class ReadingLines {

  private static final Instant START = Instant.parse("2000-01-01T00:00:00Z");
  private static final Duration STEP = Duration.ofMinutes(97);
  private static final String HEADER = "taken_at,axis,diameter_px,uncertainty_px,iso,note\n";

  private ReadingLines() {}

  /** A file of the lines {@code [from, from + count)} of an endless series from 2000 on. */
  public static String csv(int from, int count) {
    return csv(START.plus(STEP.multipliedBy(from)), STEP, count);
  }

  /** A file of lines within one year. */
  public static String csvOfYear(int year, int count) {
    Instant start = Instant.parse("%04d-01-01T00:00:00Z".formatted(year));
    return csv(start, Duration.ofDays(365).dividedBy(count), count);
  }

  private static String csv(Instant start, Duration step, int count) {
    StringBuilder csv = new StringBuilder(HEADER);
    for (int i = 0; i < count; i++) {
      csv.append(start.plus(step.multipliedBy(i)))
          .append(",horizontal,")
          .append(1700 + i % 100)
          .append(".25,1.6,400,line ")
          .append(i)
          .append('\n');
    }
    return csv.toString();
  }
}

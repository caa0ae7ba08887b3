package org.limbspan.intake;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** Instants in ISO 8601, extended format, always with an offset; kept to the microsecond. */
final class Instants {

  static final String EXPECTED =
      "an instant in ISO 8601 with an offset, such as 2026-05-02T21:14:00+02:00 or"
          + " 2026-05-02T19:14:00Z";

  private static final String OFFSET_EXPECTED =
      EXPECTED
          + "; without an offset a local time can mean different instants, in another time zone and"
          + " whenever clocks are put back";

  private static final DateTimeFormatter FORMAT =
      new DateTimeFormatterBuilder()
          .parseCaseInsensitive()
          .append(DateTimeFormatter.ISO_LOCAL_DATE_TIME)
          .appendOffset("+HH:mm", "Z")
          .toFormatter(Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT);

  private Instants() {}

  /**
   * The instant of {@code text}.
   *
   * @throws DateTimeException if it is none
   */
  static Instant parse(String text) {
    return OffsetDateTime.parse(text, FORMAT).toInstant().truncatedTo(ChronoUnit.MICROS);
  }

  /** What should have been sent in place of a text that {@link #parse} refused. */
  static String expectedInPlaceOf(String text) {
    try {
      LocalDateTime.parse(text);
      return OFFSET_EXPECTED;
    } catch (DateTimeException notEvenLocal) {
      return EXPECTED;
    }
  }
}

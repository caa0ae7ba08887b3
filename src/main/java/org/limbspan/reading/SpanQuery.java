package org.limbspan.reading;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.limbspan.intake.Query;
import org.limbspan.intake.Range;
import org.limbspan.platform.InvalidInput;

/** Which readings a request asks for. */
final class SpanQuery {

  private static final int USUAL_LIMIT = 500;
  private static final Range LIMITS = Range.between(1, 5000);

  private SpanQuery() {}

  static ReadingSpan of(@Nullable String from, @Nullable String to) {
    Instant start = end("from", from, ReadingSpan.ALL.from());
    Instant end = end("to", to, ReadingSpan.ALL.to());
    if (end.isBefore(start)) {
      throw InvalidInput.inQuery("to", to, "an instant no earlier than from");
    }
    return ReadingSpan.between(start, end);
  }

  static int limit(@Nullable String limit) {
    return limit == null ? USUAL_LIMIT : Query.whole("limit", limit, LIMITS);
  }

  private static Instant end(String name, @Nullable String value, Instant otherwise) {
    if (value == null) {
      return otherwise;
    }
    Instant instant = Query.instant(name, value);
    if (instant.isBefore(ReadingSpan.ALL.from()) || instant.isAfter(ReadingSpan.ALL.to())) {
      throw InvalidInput.inQuery(
          name, value, "an instant from " + ReadingSpan.ALL.from() + " to " + ReadingSpan.ALL.to());
    }
    return instant;
  }
}

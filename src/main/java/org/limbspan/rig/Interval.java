package org.limbspan.rig;

import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.limbspan.intake.Query;
import org.limbspan.platform.InvalidInput;
import org.limbspan.sky.Sky;

/** The interval {@code [from, to)} of a question about the sky. */
record Interval(Instant from, Instant to) {

  /**
   * The interval of a request.
   *
   * @throws InvalidInput if an end is missing, outside the ephemeris, or farther than {@code
   *     longest} from the other
   */
  static Interval of(@Nullable String from, @Nullable String to, Duration longest, Sky sky) {
    Instant start = end("from", from, sky);
    Instant end = end("to", to, sky);
    if (end.isBefore(start) || Duration.between(start, end).compareTo(longest) > 0) {
      throw InvalidInput.inQuery(
          "to", to, "an instant after from, by " + longest.toDays() + " days at most");
    }
    return new Interval(start, end);
  }

  private static Instant end(String name, @Nullable String value, Sky sky) {
    Instant instant = Query.instant(name, value == null ? "" : value);
    if (instant.isBefore(sky.ephemerisFrom()) || instant.isAfter(sky.ephemerisTo())) {
      throw InvalidInput.inQuery(
          name,
          value,
          "an instant from %s to %s, the reach of the ephemeris"
              .formatted(sky.ephemerisFrom(), sky.ephemerisTo()));
    }
    return instant;
  }
}

package org.limbspan.reading;

import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Base64;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.InvalidInput;
import org.limbspan.sky.Axis;

/** The place where a page ended, as a word that clients hand back unread. */
final class PageToken {

  private static final String SEPARATOR = " ";

  private PageToken() {}

  static String of(RecordedReading last) {
    String place = last.takenAt() + SEPARATOR + last.axis().label();
    return Base64.getUrlEncoder()
        .withoutPadding()
        .encodeToString(place.getBytes(StandardCharsets.US_ASCII));
  }

  /**
   * The part of {@code span} after the place.
   *
   * @throws InvalidInput if {@code token} was never given out
   */
  static ReadingSpan spanAfter(@Nullable String token, ReadingSpan span) {
    if (token == null) {
      return span;
    }
    try {
      String place = new String(Base64.getUrlDecoder().decode(token), StandardCharsets.US_ASCII);
      int separator = place.indexOf(SEPARATOR);
      Instant at = Instant.parse(place.substring(0, Math.max(0, separator)));
      Axis axis = Axis.ofLabel(place.substring(separator + 1));
      return at.isBefore(span.from()) ? span : span.after(at, axis.label());
    } catch (IllegalArgumentException | DateTimeException e) {
      throw InvalidInput.inQuery("after", token, "the next of an earlier page");
    }
  }
}

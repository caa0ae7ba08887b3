package org.limbspan.platform;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.jspecify.annotations.Nullable;

/**
 * What is wrong with one field of a request.
 *
 * @param field name as the client wrote it, with the unit: {@code diameterPx}, {@code diameter_px}
 * @param value what was sent, cut to a readable length; null if nothing was
 * @param expected what would have been taken, in words
 * @param line line of a CSV file from 1, the header being line 1, or place in a JSON list from 1
 * @param expectedOnPages the same where a page says it otherwise: pages count setups from 1, and
 *     know nothing of a client's fields; null where it is {@code expected}
 */
public record Violation(
    String field,
    @Nullable String value,
    String expected,
    @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Integer line,
    @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable String expectedOnPages) {

  private static final int LONGEST_VALUE = 120;

  public Violation {
    value = value == null ? null : cut(value);
  }

  public Violation(String field, @Nullable Object value, String expected) {
    this(field, value == null ? null : String.valueOf(value), expected, null, null);
  }

  /** The same, at a line of the batch. */
  public Violation atLine(int number) {
    return new Violation(field, value, expected, number, expectedOnPages);
  }

  /** The same, for which pages have words of their own. */
  public Violation onPages(String words) {
    return new Violation(field, value, expected, line, words);
  }

  /** What would have been taken, as a page says it. */
  public String wordsOfPages() {
    return expectedOnPages == null ? expected : expectedOnPages;
  }

  private static String cut(String value) {
    if (value.length() <= LONGEST_VALUE) {
      return value;
    }
    int end = Character.isHighSurrogate(value.charAt(LONGEST_VALUE - 1)) ? -1 : 0;
    return value.substring(0, LONGEST_VALUE + end) + "...";
  }
}

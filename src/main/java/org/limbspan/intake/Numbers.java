package org.limbspan.intake;

import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** Numbers as people and spreadsheets write them; never NaN, never infinite. */
final class Numbers {

  private static final Pattern POINT =
      Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,4})?");
  private static final Pattern COMMA = Pattern.compile("[+-]?\\d*,\\d+([eE][+-]?\\d{1,4})?");

  private Numbers() {}

  /** The number of a text with a decimal point; empty if it is none or too large. */
  static OptionalDouble withPoint(String text) {
    if (text.length() > 64 || !POINT.matcher(text).matches()) {
      return OptionalDouble.empty();
    }
    double value = Double.parseDouble(text);
    return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  /** The text with a decimal comma turned into a point; any other text as it is. */
  static String commaToPoint(String text) {
    return COMMA.matcher(text).matches() ? text.replace(',', '.') : text;
  }
}

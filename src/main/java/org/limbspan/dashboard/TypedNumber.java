package org.limbspan.dashboard;

import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Numbers as people type them: 12.5, 12,5, 8 1/2, with a true minus or a plain one. */
final class TypedNumber {

  private static final Pattern DECIMAL =
      Pattern.compile("[+-]?(\\d{1,9}([.,]\\d{0,9})?|[.,]\\d{1,9})");
  private static final Pattern FRACTION =
      Pattern.compile("(?:(\\d{1,6})\\s+)?(\\d{1,4})/(\\d{1,4})");

  private TypedNumber() {}

  /** Empty for anything else. */
  static OptionalDouble of(String typed) {
    String plain = typed.strip().replace('\u2212', '-');
    if (DECIMAL.matcher(plain).matches()) {
      return OptionalDouble.of(Double.parseDouble(plain.replace(',', '.')));
    }
    Matcher fraction = FRACTION.matcher(plain);
    if (fraction.matches() && Integer.parseInt(fraction.group(3)) > 0) {
      double whole = fraction.group(1) == null ? 0 : Integer.parseInt(fraction.group(1));
      return OptionalDouble.of(
          whole
              + Integer.parseInt(fraction.group(2)) / (double) Integer.parseInt(fraction.group(3)));
    }
    return OptionalDouble.empty();
  }
}

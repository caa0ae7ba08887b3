package org.limbspan.intake;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.regex.Pattern;
import org.limbspan.platform.InvalidInput;

/** Parameters of a request's address as checked values. */
public final class Query {

  /** In an address an unescaped plus sign means a space. */
  private static final Pattern LOST_PLUS = Pattern.compile(" (?=\\d\\d(:?\\d\\d)?$)");

  private Query() {}

  /**
   * An instant in ISO 8601 with an offset.
   *
   * @throws InvalidInput if it is none
   */
  public static Instant instant(String name, String value) {
    String text = LOST_PLUS.matcher(value.strip()).replaceFirst("+");
    try {
      return Instants.parse(text);
    } catch (DateTimeException notAnInstant) {
      throw InvalidInput.inQuery(name, value, Instants.expectedInPlaceOf(text));
    }
  }

  /**
   * A finite number in a range.
   *
   * @throws InvalidInput if it is none
   */
  public static double number(String name, String value, Range range) {
    double number = Numbers.withPoint(value.strip()).orElse(Double.NaN);
    if (!range.holds(number)) {
      throw InvalidInput.inQuery(name, value, "a number " + range.words());
    }
    return number;
  }

  /**
   * A whole number in a range.
   *
   * @throws InvalidInput if it is none
   */
  public static int whole(String name, String value, Range range) {
    double number = Numbers.withPoint(value.strip()).orElse(Double.NaN);
    if (!range.holds(number) || number != Math.rint(number)) {
      throw InvalidInput.inQuery(name, value, "a whole number " + range.words());
    }
    return (int) number;
  }
}

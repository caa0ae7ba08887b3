package org.limbspan.platform;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** A request whose values cannot be taken; nothing of it was stored. */
public final class InvalidInput extends Problem {

  private static final long serialVersionUID = 1L;

  private InvalidInput(Category category, String detail, List<Violation> violations) {
    super(category, detail, violations);
  }

  /** Content that was read and cannot be taken: 422. */
  public static InvalidInput inBody(List<Violation> violations) {
    return new InvalidInput(Category.INVALID_CONTENT, sentence(violations), violations);
  }

  /** Content that was read and cannot be taken, with the sum of it in words: 422. */
  public static InvalidInput inBody(String detail, List<Violation> violations) {
    return new InvalidInput(Category.INVALID_CONTENT, detail, violations);
  }

  /** Content with one field that cannot be taken: 422. */
  public static InvalidInput inBody(String field, @Nullable Object value, String expected) {
    return inBody(List.of(new Violation(field, value, expected)));
  }

  /** A path or query parameter that makes no sense: 400. */
  public static InvalidInput inQuery(String field, @Nullable Object value, String expected) {
    List<Violation> violations = List.of(new Violation(field, value, expected));
    return new InvalidInput(Category.MALFORMED, sentence(violations), violations);
  }

  /** Content that cannot be read at all, such as a CSV file without its header: 400. */
  public static InvalidInput unreadable(String detail, List<Violation> violations) {
    return new InvalidInput(Category.MALFORMED, detail, violations);
  }

  private static String sentence(List<Violation> violations) {
    if (violations.size() != 1) {
      return violations.size() + " values cannot be accepted; nothing was stored.";
    }
    Violation only = violations.get(0);
    String place = only.line() == null ? "" : "Line " + only.line() + ": ";
    String value = only.value() == null ? " is missing" : " is '" + only.value() + "'";
    return place + only.field() + value + "; expected " + only.expected() + ".";
  }
}

package org.limbspan.platform;

import java.util.List;

/** Something was asked for that is not held: 404. */
public final class NotFound extends Problem {

  private static final long serialVersionUID = 1L;

  /**
   * @param thing what was looked for: {@code rig}
   * @param field the field or parameter that named it: {@code slug}
   * @param value the name under which it was looked for
   */
  public NotFound(String thing, String field, Object value) {
    this(thing, new Violation(field, value, "the name of a " + thing + " that is held"));
  }

  /** Something of a held thing is not held itself. */
  public NotFound(String detail) {
    super(Category.NOT_FOUND, detail, List.of());
  }

  private NotFound(String thing, Violation violation) {
    super(
        Category.NOT_FOUND,
        "There is no " + thing + " '" + violation.value() + "'.",
        List.of(violation));
  }
}

package org.limbspan.platform;

import java.util.List;

/** The request comes from somebody, or somewhere, that may not send it: 401 or 403. */
public final class Refused extends Problem {

  private static final long serialVersionUID = 1L;

  private Refused(Category category, String detail, List<Violation> violations) {
    super(category, detail, violations);
  }

  /** Nobody may send this in this way: 403. */
  public static Refused forbidden(String detail, List<Violation> violations) {
    return new Refused(Category.FORBIDDEN, detail, violations);
  }

  /** Somebody known might: 401. */
  public static Refused unauthenticated(String detail) {
    return new Refused(Category.UNAUTHENTICATED, detail, List.of());
  }
}

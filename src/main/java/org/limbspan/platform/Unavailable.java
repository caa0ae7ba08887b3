package org.limbspan.platform;

import java.util.List;

/** Something that the service needs does not answer; the same request may succeed later: 503. */
public final class Unavailable extends Problem {

  private static final long serialVersionUID = 1L;

  public Unavailable(String detail) {
    super(Category.UNAVAILABLE, detail, List.of());
  }
}

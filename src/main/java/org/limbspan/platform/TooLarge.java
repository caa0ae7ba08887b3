package org.limbspan.platform;

import java.util.List;

/** More was sent than is taken at once: 413. */
public final class TooLarge extends Problem {

  private static final long serialVersionUID = 1L;

  public TooLarge(String detail) {
    super(Category.TOO_LARGE, detail, List.of());
  }
}

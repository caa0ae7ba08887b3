package org.limbspan.platform;

import org.jspecify.annotations.Nullable;

/** The service cannot start, and the owner can do something about it. */
public final class StartRefused extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final String remedy;

  public StartRefused(String reason, String remedy) {
    this(reason, remedy, null);
  }

  public StartRefused(String reason, String remedy, @Nullable Throwable cause) {
    super(reason, cause);
    this.remedy = remedy;
  }

  public String remedy() {
    return remedy;
  }
}

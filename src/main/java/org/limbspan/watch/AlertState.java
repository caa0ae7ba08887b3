package org.limbspan.watch;

/** The life of an alert. */
public enum AlertState {
  /** Found, and not yet answered. */
  RAISED("raised"),
  /** The owner has given a cause. */
  ANSWERED("answered"),
  /** Answered, and enough later readings agree. */
  SETTLED("settled");

  private final String label;

  AlertState(String label) {
    this.label = label;
  }

  public String label() {
    return label;
  }
}

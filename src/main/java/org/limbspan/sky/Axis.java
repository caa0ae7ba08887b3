package org.limbspan.sky;

/** The direction along which a diameter of the disc is measured. */
public enum Axis {
  /** Parallel to the horizon: refraction hardly touches it. */
  HORIZONTAL("horizontal"),
  /** At right angles to the horizon: refraction flattens it. */
  VERTICAL("vertical"),
  /** A fit to the whole visible limb: the mean of horizontal and vertical. */
  LIMB_FIT("limb-fit");

  private final String label;

  Axis(String label) {
    this.label = label;
  }

  /** The word used in files and answers: {@code horizontal}, {@code vertical}, {@code limb-fit}. */
  public String label() {
    return label;
  }

  /**
   * The axis of that word.
   *
   * @throws IllegalArgumentException if {@code label} is none of the three words
   */
  public static Axis ofLabel(String label) {
    for (Axis axis : values()) {
      if (axis.label.equals(label)) {
        return axis;
      }
    }
    throw new IllegalArgumentException(
        "axis '" + label + "': expected horizontal, vertical or limb-fit");
  }
}

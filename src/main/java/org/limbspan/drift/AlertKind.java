package org.limbspan.drift;

/** What an alert is about. */
public enum AlertKind {
  /** From one moment on every disc is larger or smaller by the same share. */
  SCALE_STEP("scale-step"),
  /** The discs grow or shrink steadily with time. */
  SCALE_DRIFT("scale-drift"),
  /** The readings scatter more than they did. */
  SCATTER_GROWTH("scatter-growth"),
  /** A calibration disagrees with its setup's others, or with what the Moon says of the scale. */
  CALIBRATION_CONFLICT("calibration-conflict"),
  /** The residuals go with the altitude, as refraction does. */
  ALTITUDE_TREND("altitude-trend"),
  /** The Moon cannot have stood there at the instant that was logged. */
  CLOCK_SUSPECT("clock-suspect"),
  /** The monthly size cycle is larger or smaller than predicted. */
  SWING_DEPARTURE("swing-departure"),
  /** The size changes between horizon and culmination by more or less than predicted. */
  RATIO_DEPARTURE("ratio-departure");

  private final String label;

  AlertKind(String label) {
    this.label = label;
  }

  /** The word used in answers, such as {@code scale-step}. */
  public String label() {
    return label;
  }

  /**
   * The kind of that word.
   *
   * @throws IllegalArgumentException if {@code label} is none of the eight words
   */
  public static AlertKind ofLabel(String label) {
    for (AlertKind kind : values()) {
      if (kind.label.equals(label)) {
        return kind;
      }
    }
    throw new IllegalArgumentException("alert kind '" + label + "': expected one of the eight");
  }
}

package org.limbspan.reading;

/**
 * A diameter of the Moon's disc as it was entered.
 *
 * @param value greater than 0, in {@code unit}
 * @param uncertainty standard uncertainty, greater than 0 and below the value, in {@code unit}
 */
public record Diameter(double value, double uncertainty, DiameterUnit unit) {

  public Diameter {
    if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "diameter " + value + " " + unit.symbol() + ": expected a finite number above 0");
    }
    if (!(uncertainty > 0 && uncertainty < value)) {
      throw new IllegalArgumentException(
          "uncertainty "
              + uncertainty
              + " "
              + unit.symbol()
              + ": expected above 0, below "
              + value);
    }
  }

  /** Standard uncertainty over value. */
  public double relativeUncertainty() {
    return uncertainty / value;
  }
}

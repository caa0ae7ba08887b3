package org.limbspan.scale;

/**
 * A length measured in the image.
 *
 * @param value length in {@code unit}, greater than 0
 * @param uncertainty its standard uncertainty in {@code unit}, greater than 0 and below the length
 */
public record ImageLength(double value, double uncertainty, LengthUnit unit) {

  public ImageLength {
    if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "length " + value + " " + unit.symbol() + ": expected a finite number above 0");
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

  /** Standard uncertainty over length. */
  public double relativeUncertainty() {
    return uncertainty / value;
  }
}

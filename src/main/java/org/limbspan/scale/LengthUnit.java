package org.limbspan.scale;

/** What lengths in an image are counted in: one unit for all of a setup. */
public enum LengthUnit {
  /** Pixels of the sensor. */
  PIXEL("px", "Px"),
  /** Millimetres of a ruler held to a screen, at one magnification for target and Moon. */
  MILLIMETRE("mm", "Mm");

  private final String symbol;
  private final String suffix;

  LengthUnit(String symbol, String suffix) {
    this.symbol = symbol;
    this.suffix = suffix;
  }

  /** The symbol of the unit: {@code px} or {@code mm}. */
  public String symbol() {
    return symbol;
  }

  /** The ending of names that carry the unit: {@code Px} or {@code Mm}. */
  public String suffix() {
    return suffix;
  }

  /**
   * The unit of that symbol.
   *
   * @throws IllegalArgumentException if {@code symbol} is neither {@code px} nor {@code mm}
   */
  public static LengthUnit ofSymbol(String symbol) {
    for (LengthUnit unit : values()) {
      if (unit.symbol.equals(symbol)) {
        return unit;
      }
    }
    throw new IllegalArgumentException("length unit '" + symbol + "': expected px or mm");
  }
}

package org.limbspan.reading;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.scale.LengthUnit;

/** What a diameter was entered in: a length in the image, or an angle already standardised. */
public enum DiameterUnit {
  PIXEL(LengthUnit.PIXEL, "px", "Px"),
  MILLIMETRE(LengthUnit.MILLIMETRE, "mm", "Mm"),
  ARCMINUTE(null, "arcmin", "Arcmin");

  private final @Nullable LengthUnit length;
  private final String symbol;
  private final String suffix;

  DiameterUnit(@Nullable LengthUnit length, String symbol, String suffix) {
    this.length = length;
    this.symbol = symbol;
    this.suffix = suffix;
  }

  /** The unit of length; empty for an angle. */
  public Optional<LengthUnit> length() {
    return Optional.ofNullable(length);
  }

  /** {@code px}, {@code mm} or {@code arcmin}. */
  public String symbol() {
    return symbol;
  }

  /** The ending of names that carry the unit: {@code Px}, {@code Mm} or {@code Arcmin}. */
  public String suffix() {
    return suffix;
  }

  static DiameterUnit ofSymbol(String symbol) {
    for (DiameterUnit unit : values()) {
      if (unit.symbol.equals(symbol)) {
        return unit;
      }
    }
    throw new IllegalArgumentException("unit '" + symbol + "': expected px, mm or arcmin");
  }
}

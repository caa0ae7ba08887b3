package org.limbspan.dashboard;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;

/**
 * Units of length as people type them. The inch is 25.4 mm exactly, the foot 12, the yard 36 of
 * them (international yard and pound agreement, 1959).
 */
enum TypedUnit {
  PIXEL("px", "1"),
  MILLIMETRE("mm", "1"),
  CENTIMETRE("cm", "10"),
  METRE("m", "1000"),
  INCH("in", "25.4"),
  FOOT("ft", "304.8"),
  YARD("yd", "914.4");

  private final String symbol;
  private final BigDecimal inMillimetres;

  TypedUnit(String symbol, String inMillimetres) {
    this.symbol = symbol;
    this.inMillimetres = new BigDecimal(inMillimetres);
  }

  static Optional<TypedUnit> ofSymbol(String symbol) {
    return Arrays.stream(values()).filter(unit -> unit.symbol.equals(symbol)).findFirst();
  }

  /** Exact in decimals: 50 yd are 45720 mm, not 45719.99999. */
  double millimetres(double value) {
    return BigDecimal.valueOf(value).multiply(inMillimetres).doubleValue();
  }
}

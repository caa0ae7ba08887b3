package org.limbspan.dashboard;

import java.util.Arrays;
import java.util.Optional;

/** Units of a small angle as people type them. */
enum TypedAngle {
  ARCMINUTE("arcmin", 1),
  ARCSECOND("arcsec", 1 / 60.0),
  DEGREE("deg", 60);

  private final String symbol;
  private final double inArcminutes;

  TypedAngle(String symbol, double inArcminutes) {
    this.symbol = symbol;
    this.inArcminutes = inArcminutes;
  }

  static Optional<TypedAngle> ofSymbol(String symbol) {
    return Arrays.stream(values()).filter(unit -> unit.symbol.equals(symbol)).findFirst();
  }

  double arcminutes(double value) {
    return value * inArcminutes;
  }
}

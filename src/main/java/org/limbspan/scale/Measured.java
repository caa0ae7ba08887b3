package org.limbspan.scale;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A value and its standard uncertainty, in the same unit, and how to write them.
 *
 * <p>The uncertainty is written to two significant digits and the value to the same place (JCGM
 * 100:2008, 7.2.6). An uncertainty of 0 is an exact value and written as it stands.
 *
 * @param value finite
 * @param standardUncertainty finite, 0 or more
 */
public record Measured(double value, double standardUncertainty) {

  private static final MathContext TWO_DIGITS = new MathContext(2, RoundingMode.HALF_UP);

  public Measured {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("value " + value + ": expected a finite number");
    }
    if (!(standardUncertainty >= 0 && standardUncertainty < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "standardUncertainty " + standardUncertainty + ": expected 0 or more");
    }
  }

  /** The value, rounded to the last digit that the uncertainty lets stand. */
  public String valueText() {
    if (standardUncertainty == 0) {
      return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
    return BigDecimal.valueOf(value).setScale(decimals(), RoundingMode.HALF_EVEN).toPlainString();
  }

  /** The standard uncertainty to two significant digits. */
  public String uncertaintyText() {
    return roundedUncertainty().toPlainString();
  }

  /** The expanded uncertainty for k = 2, to the same place as the value. */
  public String expandedText() {
    BigDecimal twice = BigDecimal.valueOf(2 * standardUncertainty);
    return twice.setScale(decimals(), RoundingMode.HALF_UP).toPlainString();
  }

  private int decimals() {
    return Math.max(0, roundedUncertainty().scale());
  }

  private BigDecimal roundedUncertainty() {
    BigDecimal rounded = new BigDecimal(standardUncertainty).round(TWO_DIGITS);
    return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
  }
}

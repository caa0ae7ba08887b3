package org.limbspan.cycle;

/**
 * A value with its standard uncertainty (JCGM 100:2008), both in the unit that the owner of the
 * estimate states.
 */
public record Estimate(double value, double uncertainty) {

  public Estimate {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("value " + value + ": expected a finite number");
    }
    if (!(uncertainty >= 0 && uncertainty < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "uncertainty " + uncertainty + ": expected 0 or more, and finite");
    }
  }

  /** How many standard uncertainties the value lies above {@code expected}; negative below. */
  public double sigmasFrom(double expected) {
    return (value - expected) / uncertainty;
  }

  /** The same estimate in another unit, {@code factor} of them to one of this. */
  public Estimate times(double factor) {
    return new Estimate(value * factor, uncertainty * Math.abs(factor));
  }
}

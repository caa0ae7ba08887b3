package org.limbspan.scale;

/** Angles at the surface of the package, and the checks its records share. */
final class Angles {

  private static final double ARCSEC_PER_RADIAN = 180 * 3600 / Math.PI;

  private Angles() {}

  static double arcsec(double radians) {
    return radians * ARCSEC_PER_RADIAN;
  }

  static void requirePositive(String name, double value) {
    if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(name + " " + value + ": expected a finite number above 0");
    }
  }

  static void requireUncertainty(String name, double value, double of) {
    if (!(value >= 0 && value < of)) {
      throw new IllegalArgumentException(
          name + " " + value + ": expected 0 or more, and below " + of);
    }
  }
}

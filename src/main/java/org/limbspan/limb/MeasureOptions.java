package org.limbspan.limb;

import java.util.Optional;

/**
 * What is known before a photograph is measured.
 *
 * @param leastDiameterPx smallest disc to measure, 20 to 2000 pixels
 * @param flattening what refraction is expected to do, when the altitude is known
 */
public record MeasureOptions(double leastDiameterPx, Optional<ExpectedFlattening> flattening) {

  public MeasureOptions {
    if (!(leastDiameterPx >= 20 && leastDiameterPx <= 2000)) {
      throw new IllegalArgumentException(
          "leastDiameterPx " + leastDiameterPx + ": expected 20 to 2000");
    }
  }

  public static MeasureOptions standard() {
    return new MeasureOptions(80, Optional.empty());
  }

  public MeasureOptions expecting(ExpectedFlattening expected) {
    return new MeasureOptions(leastDiameterPx, Optional.of(expected));
  }

  /**
   * Flattening by refraction, 1 - vertical / horizontal, as computed for the Moon's altitude. It
   * helps where too little of the limb is lit to measure both axes; a photograph that contradicts
   * it by much is believed instead.
   *
   * @param value -0.001 to 0.3
   * @param uncertainty standard uncertainty, 0.00001 to 0.1
   */
  public record ExpectedFlattening(double value, double uncertainty) {

    public ExpectedFlattening {
      if (!(value >= -0.001 && value <= 0.3)) {
        throw new IllegalArgumentException("flattening " + value + ": expected -0.001 to 0.3");
      }
      if (!(uncertainty >= 1e-5 && uncertainty <= 0.1)) {
        throw new IllegalArgumentException(
            "flattening uncertainty " + uncertainty + ": expected 0.00001 to 0.1");
      }
    }
  }
}

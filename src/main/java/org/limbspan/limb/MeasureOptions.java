package org.limbspan.limb;

import java.util.Optional;

/**
 * What is known before a photograph is measured.
 *
 * @param leastDiameterPx smallest disc to measure, 20 to 2000 pixels
 * @param flattening what refraction is expected to do, when the altitude is known
 * @param phase how the Moon is lit, when instant and place are known
 */
public record MeasureOptions(
    double leastDiameterPx,
    Optional<ExpectedFlattening> flattening,
    Optional<ExpectedPhase> phase) {

  public MeasureOptions {
    if (!(leastDiameterPx >= 20 && leastDiameterPx <= 2000)) {
      throw new IllegalArgumentException(
          "leastDiameterPx " + leastDiameterPx + ": expected 20 to 2000");
    }
  }

  public static MeasureOptions standard() {
    return new MeasureOptions(80, Optional.empty(), Optional.empty());
  }

  public MeasureOptions expecting(ExpectedFlattening expected) {
    return new MeasureOptions(leastDiameterPx, Optional.of(expected), phase);
  }

  public MeasureOptions expecting(ExpectedPhase expected) {
    return new MeasureOptions(leastDiameterPx, flattening, Optional.of(expected));
  }

  /** The same, with nothing known beforehand. */
  MeasureOptions expectingNothing() {
    return new MeasureOptions(leastDiameterPx, Optional.empty(), Optional.empty());
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

  /**
   * How the Sun lights the disc, as computed for the photograph's instant and place. It tells limb
   * from terminator where the photograph hardly does, near full Moon above all; a photograph that
   * shows another phase (a wrong clock, a mirrored picture) is believed instead.
   *
   * @param illuminatedFraction 0 to 1
   * @param phaseUncertaintyRad standard uncertainty of the phase angle, 0.0001 to 0.5 radians; an
   *     hour of the camera's clock is 0.009
   * @param brightLimbRad direction of the middle of the bright limb as seen, radians
   *     counter-clockwise from the horizon's right
   * @param brightLimbUncertaintyRad standard uncertainty of that direction, 0.001 to 1 radian: the
   *     camera's roll above all
   */
  public record ExpectedPhase(
      double illuminatedFraction,
      double phaseUncertaintyRad,
      double brightLimbRad,
      double brightLimbUncertaintyRad) {

    public ExpectedPhase {
      if (!(illuminatedFraction >= 0 && illuminatedFraction <= 1)) {
        throw new IllegalArgumentException(
            "illuminatedFraction " + illuminatedFraction + ": expected 0 to 1");
      }
      if (!(phaseUncertaintyRad >= 1e-4 && phaseUncertaintyRad <= 0.5)) {
        throw new IllegalArgumentException(
            "phaseUncertaintyRad " + phaseUncertaintyRad + ": expected 0.0001 to 0.5");
      }
      if (!Double.isFinite(brightLimbRad)) {
        throw new IllegalArgumentException(
            "brightLimbRad " + brightLimbRad + ": expected a finite angle");
      }
      if (!(brightLimbUncertaintyRad >= 1e-3 && brightLimbUncertaintyRad <= 1)) {
        throw new IllegalArgumentException(
            "brightLimbUncertaintyRad " + brightLimbUncertaintyRad + ": expected 0.001 to 1");
      }
    }
  }
}

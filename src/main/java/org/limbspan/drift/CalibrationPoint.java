package org.limbspan.drift;

import java.time.Instant;

/**
 * One calibration, relative to its setup. Logarithms and uncertainties are without unit: 0.001 is
 * 0.1 percent.
 *
 * @param takenAt instant of the calibration
 * @param logScale ln(plate scale of this calibration / plate scale by which the setup's readings
 *     were turned into arcminutes)
 * @param independentUncertainty standard uncertainty of what differs from calibration to
 *     calibration: the pixels, and the distance where it is measured each time; greater than 0
 * @param commonUncertainty standard uncertainty of what all calibrations of the rig share, such as
 *     the length of the sheet; at least 0
 */
public record CalibrationPoint(
    Instant takenAt, double logScale, double independentUncertainty, double commonUncertainty) {

  public CalibrationPoint {
    if (!(Math.abs(logScale) < 5)) {
      throw new IllegalArgumentException("logScale " + logScale + ": expected within -5 and 5");
    }
    if (!(independentUncertainty > 0 && independentUncertainty < 1)) {
      throw new IllegalArgumentException(
          "independentUncertainty " + independentUncertainty + ": expected above 0 and below 1");
    }
    if (!(commonUncertainty >= 0 && commonUncertainty < 1)) {
      throw new IllegalArgumentException(
          "commonUncertainty " + commonUncertainty + ": expected from 0 to below 1");
    }
  }
}

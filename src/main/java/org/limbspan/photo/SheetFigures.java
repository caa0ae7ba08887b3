package org.limbspan.photo;

import org.limbspan.limb.SheetMeasurement.Measured;
import org.limbspan.scale.Calibration;
import org.limbspan.scale.ImageLength;
import org.limbspan.scale.LengthUnit;

/**
 * What a calibration photograph gives.
 *
 * <p>A tall side that looks too short against the other one is not lengthened: that the sheet leans
 * is likely, not known. The whole of what lacks counts as a standard uncertainty instead.
 */
record SheetFigures(SheetTarget sheet, Measured measured) {

  double tallSideUncertaintyPx() {
    double lack = Math.max(0, measured.shortening().orElse(0));
    return Math.hypot(measured.tallSideUncertaintyPx(), lack * measured.tallSidePx());
  }

  /** Standard uncertainty of the proportion of the sides, over the proportion. */
  double proportionUncertainty() {
    return Math.hypot(
        measured.tallSideUncertaintyPx() / measured.tallSidePx(),
        measured.shortSideUncertaintyPx() / measured.shortSidePx());
  }

  Calibration calibration() {
    return new Calibration(
        sheet.target(),
        new ImageLength(measured.tallSidePx(), tallSideUncertaintyPx(), LengthUnit.PIXEL));
  }
}

package org.limbspan.photo;

import java.util.OptionalDouble;
import org.limbspan.limb.SheetMeasurement.Measured;
import org.limbspan.scale.Calibration;
import org.limbspan.scale.ImageLength;
import org.limbspan.scale.LengthUnit;
import org.limbspan.scale.Target;

/**
 * What a calibration photograph gives; see {@link Measured}.
 *
 * <p>A tall side that looks too short against the other one is not lengthened: that the sheet leans
 * is likely, not known. The whole of what lacks counts as a standard uncertainty instead.
 *
 * @param edgesPx standard uncertainty of the tall side from its edges alone, pixels
 * @param otherSideUncertaintyPx standard uncertainty of the other side, pixels
 * @param unequalSides relative difference of the two tall sides
 * @param shortening share by which the tall side looks too short; empty if the other side is not
 *     known
 */
public record SheetFigures(
    Target target,
    double tallSidePx,
    double edgesPx,
    double otherSidePx,
    double otherSideUncertaintyPx,
    double unequalSides,
    OptionalDouble shortening,
    double edgeFwhmPx) {

  static SheetFigures of(SheetTarget sheet, Measured measured) {
    return new SheetFigures(
        sheet.target(),
        measured.tallSidePx(),
        measured.tallSideUncertaintyPx(),
        measured.shortSidePx(),
        measured.shortSideUncertaintyPx(),
        measured.unequalSides(),
        measured.shortening(),
        measured.edgeFwhmPx());
  }

  /** Standard uncertainty of the tall side, a lean included, pixels. */
  public double tallSideUncertaintyPx() {
    double lack = Math.max(0, shortening.orElse(0));
    return Math.hypot(edgesPx, lack * tallSidePx);
  }

  /** Standard uncertainty of the proportion of the sides, over the proportion. */
  public double proportionUncertainty() {
    return Math.hypot(edgesPx / tallSidePx, otherSideUncertaintyPx / otherSidePx);
  }

  /** The calibration that it makes, in pixels. */
  public Calibration calibration() {
    return new Calibration(
        target, new ImageLength(tallSidePx, tallSideUncertaintyPx(), LengthUnit.PIXEL));
  }
}

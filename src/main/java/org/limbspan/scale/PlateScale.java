package org.limbspan.scale;

/**
 * How large an angle one unit of length in the image is.
 *
 * <p>The two parts of the uncertainty answer different questions. A <em>change</em> between two
 * calibrations of one sheet and one tape is blurred by the independent parts only; the
 * <em>absolute</em> size of the Moon is blurred by both.
 *
 * <p>An angle is the length times the scale. A rectilinear lens maps an angle a from its axis to f
 * tan a, so this is exact for an object of the target's own size and short by a third of the
 * difference of the squared half-angles otherwise: for a disc of 0.52 degrees against a sheet of
 * 0.34 degrees, both at the centre of the field, 4e-6 of the diameter, a two-hundredth of the
 * uncertainty of the best reading, and therefore left out.
 *
 * @param arcsecPerUnit arcseconds in a pixel or millimetre, greater than 0
 * @param independentUncertainty standard uncertainty from the images alone, arcseconds per unit, 0
 *     or more
 * @param commonUncertainty standard uncertainty from what the image shows: the length and distance
 *     of the target or the separation of the stars; arcseconds per unit, 0 or more
 */
public record PlateScale(
    double arcsecPerUnit,
    double independentUncertainty,
    double commonUncertainty,
    LengthUnit unit) {

  public PlateScale {
    Angles.requirePositive("arcsecPerUnit", arcsecPerUnit);
    Angles.requireUncertainty("independentUncertainty", independentUncertainty, arcsecPerUnit);
    Angles.requireUncertainty("commonUncertainty", commonUncertainty, arcsecPerUnit);
  }

  /** Combined standard uncertainty (JCGM 100:2008, 5.1), arcseconds per unit. */
  public double uncertainty() {
    return Math.hypot(independentUncertainty, commonUncertainty);
  }

  /** Combined standard uncertainty as a fraction of the scale. */
  public double relativeUncertainty() {
    return uncertainty() / arcsecPerUnit;
  }

  /**
   * The angle of a length in the image, in arcminutes.
   *
   * @param length in this scale's unit
   */
  public double arcmin(double length) {
    return length * arcsecPerUnit / 60;
  }
}

package org.limbspan.sky;

import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.RotationOrder;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.orekit.time.AbsoluteDate;
import org.orekit.time.TimeScalarFunction;
import org.orekit.time.TimeScales;
import org.orekit.time.TimeVectorFunction;
import org.orekit.utils.IERSConventions;

/**
 * From the axes of J2000.0 to axes that turn with the Earth: precession (IAU 1976), nutation (IAU
 * 1980) and sidereal time (IAU 1982 with the equation of the equinoxes of 1994), as Orekit has them
 * for the IERS Conventions of 1996.
 *
 * <p>Accuracy: 0.1 arcseconds against the conventions of 2010, besides UT1 (see {@link Times}) and
 * polar motion (0.5 arcseconds), which are left out.
 */
final class EarthRotation {

  private static final RotationConvention FRAME = RotationConvention.FRAME_TRANSFORM;

  private final TimeVectorFunction precession;
  private final Nutation nutation;
  private final TimeScalarFunction meanObliquity;
  private final TimeScalarFunction meanSiderealTime;
  private final TimeScalarFunction siderealRate;
  private final Rotation eclipticOfJ2000;

  EarthRotation(TimeScales scales) {
    IERSConventions conventions = IERSConventions.IERS_1996;
    precession = conventions.getPrecessionFunction(scales);
    nutation = new Nutation(conventions, scales);
    meanObliquity = conventions.getMeanObliquityFunction(scales);
    meanSiderealTime = conventions.getGMSTFunction(scales.getUTC(), scales);
    siderealRate = conventions.getGMSTRateFunction(scales.getUTC(), scales);
    double obliquityOfJ2000 = meanObliquity.value(conventions.getNutationReferenceEpoch(scales));
    eclipticOfJ2000 = new Rotation(Vector3D.PLUS_I, obliquityOfJ2000, FRAME);
  }

  /** The Earth's attitude at an instant, and how fast it turns. */
  Attitude at(AbsoluteDate date) {
    double[] precessionAngles = precession.value(date);
    double[] nutationAngles = nutation.at(date);
    double obliquity = meanObliquity.value(date);
    Rotation precessionRotation =
        new Rotation(
            RotationOrder.ZXZ,
            FRAME,
            -precessionAngles[0],
            -precessionAngles[1],
            precessionAngles[2]);
    Rotation nutationRotation =
        new Rotation(
            RotationOrder.XZX,
            FRAME,
            obliquity,
            -nutationAngles[0],
            -obliquity - nutationAngles[1]);
    Rotation equator =
        eclipticOfJ2000.compose(precessionRotation, FRAME).compose(nutationRotation, FRAME);
    double equationOfEquinoxes = nutationAngles[0] * Math.cos(obliquity) + nutationAngles[2];
    return new Attitude(
        equator, meanSiderealTime.value(date) + equationOfEquinoxes, siderealRate.value(date));
  }

  /**
   * @param trueEquator from the axes of J2000.0 to the true equator and equinox of date
   * @param siderealTimeRad apparent sidereal time at Greenwich
   * @param siderealRateRadPerS its rate
   */
  record Attitude(Rotation trueEquator, double siderealTimeRad, double siderealRateRadPerS) {

    /** From the axes of J2000.0 to the axes of the Earth (x to Greenwich, z north). */
    Rotation toEarth() {
      return trueEquator.compose(new Rotation(Vector3D.PLUS_K, siderealTimeRad, FRAME), FRAME);
    }
  }
}

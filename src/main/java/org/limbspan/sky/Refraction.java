package org.limbspan.sky;

/**
 * How the air lifts the Moon and flattens its disc. Altitudes in degrees, refraction in arcminutes.
 *
 * <p>Definition: apparent altitude is true altitude plus refraction R. For a true altitude h, R =
 * 1.02' cot(h + 10.3/(h + 5.11)); for an apparent altitude h0, R = cot(h0 + 7.31/(h0 + 4.4)) in
 * arcminutes; both for 1010 hPa and 10 degrees C, scaled by P/1010 and by 283/(273 + T).
 *
 * <p>Source: G. G. Bennett, Journal of Navigation 35 (1982) 255; T. Saemundsson, Sky and Telescope
 * 72 (1986) 70; both in J. Meeus, Astronomical Algorithms (2nd ed. 1998), ch. 16.
 *
 * <p>Accuracy: 0.1' down to the horizon in mean air; within a degree of the horizon real air
 * differs by minutes of arc from night to night. Both formulas are up to 5 percent (3 arcseconds at
 * 45 degrees) above ray tracing high in the sky.
 *
 * <p>Below the horizon: the formula is used down to a true altitude of -1.25 degrees, where the
 * whole Moon has set; from there the effect fades linearly, and is nothing below -3.25 degrees.
 * That is a convention, for a Moon nobody sees: it keeps every figure finite and the apparent
 * altitude rising with the true one.
 *
 * <p>The disc: air shrinks the horizontal diameter too, by the same {@link #horizontalContraction}
 * of about 0.03 percent at every altitude. That uniform part is left out of both diameters: it
 * cancels in swing and ratio, it is below the uncertainty of a calibration, and with it out of both
 * they agree at the zenith. So the horizontal diameter is the airless one, and the vertical one is
 * {@link #verticalFactor} times that.
 */
public final class Refraction {

  static final double FORMULA_LEAST_DEG = -1.25;
  static final double FADED_DEG = -3.25;

  /** Least apparent altitude for which {@link #flatteningDoubt} is stated. */
  public static final double FLATTENING_LEAST_DEG = 0.7;

  private Refraction() {}

  /** Refraction at a true altitude, -90 to 90, in arcminutes (Saemundsson). */
  public static double atTrueAltitudeArcmin(double altitudeDeg, Atmosphere air) {
    requireAltitude("altitudeDeg", altitudeDeg);
    double formula = saemundssonArcmin(Math.max(altitudeDeg, FORMULA_LEAST_DEG));
    return formula * density(air) * strength(altitudeDeg);
  }

  /** Refraction at an apparent altitude, 0 to 90, in arcminutes (Bennett). */
  public static double atApparentAltitudeArcmin(double apparentAltitudeDeg, Atmosphere air) {
    if (!(apparentAltitudeDeg >= 0 && apparentAltitudeDeg <= 90)) {
      throw new IllegalArgumentException(
          "apparentAltitudeDeg " + apparentAltitudeDeg + ": expected 0 to 90");
    }
    return density(air) * cot(apparentAltitudeDeg + 7.31 / (apparentAltitudeDeg + 4.4));
  }

  /** Apparent altitude for a true one, -90 to 90, in degrees. */
  public static double apparentAltitudeDeg(double altitudeDeg, Atmosphere air) {
    return Math.min(90, altitudeDeg + atTrueAltitudeArcmin(altitudeDeg, air) / 60);
  }

  /**
   * Apparent altitude of a star, -90 to 90, in degrees: the same formula, moved up by the 0.0019
   * arcminutes by which it misses 0 at the zenith. There two stars that are near each other would
   * otherwise be a part in ten thousand too far apart.
   */
  public static double apparentStarAltitudeDeg(double altitudeDeg, Atmosphere air) {
    requireAltitude("altitudeDeg", altitudeDeg);
    double missAtZenithArcmin = saemundssonArcmin(90) * density(air) * strength(altitudeDeg);
    double liftArcmin = atTrueAltitudeArcmin(altitudeDeg, air) - missAtZenithArcmin;
    return Math.min(90, altitudeDeg + liftArcmin / 60);
  }

  /**
   * Vertical over horizontal diameter: upper and lower limb lifted each by its own refraction, over
   * the same for a disc at the zenith.
   *
   * @param altitudeDeg true altitude of the Moon's centre, -90 to 90
   * @param diameterArcmin airless diameter, 20 to 40
   * @return above 0; 1 at the zenith and far below the horizon
   */
  public static double verticalFactor(double altitudeDeg, double diameterArcmin, Atmosphere air) {
    requireAltitude("altitudeDeg", altitudeDeg);
    if (!(diameterArcmin >= 20 && diameterArcmin <= 40)) {
      throw new IllegalArgumentException(
          "diameterArcmin " + diameterArcmin + ": expected 20 to 40");
    }
    double centreDeg = Math.max(altitudeDeg, FORMULA_LEAST_DEG);
    double uniform = 1 - limbContraction(90, diameterArcmin, air);
    double factor = (1 - limbContraction(centreDeg, diameterArcmin, air)) / uniform;
    return 1 - (1 - factor) * strength(altitudeDeg);
  }

  /**
   * The part by which air shrinks the disc in every direction at every altitude, and which the
   * diameters of this package leave out: 0.00030 at 1010 hPa and 10 degrees C by Saemundsson's
   * formula, 0.00028 by ray tracing.
   */
  public static double horizontalContraction(Atmosphere air) {
    return limbContraction(90, 31, air);
  }

  /**
   * Relative standard uncertainty of the flattening, 1 - {@link #verticalFactor}, where the night's
   * own air is not known: a twentieth for temperatures 10 degrees and pressures 10 hPa from the
   * mean ones, and 0.1 / h^1.3 for what lies near the ground (slow or steep cooling upwards, an
   * inversion, heated ground) and for the formula itself; 0.11 at an altitude of 1 degree, 0.055 at
   * 3, 0.05 from 10 on. Source: ray tracing through such airs, in the project's tests.
   *
   * @param apparentAltitudeDeg of the Moon's centre, {@value #FLATTENING_LEAST_DEG} to 90; lower,
   *     the night decides
   */
  public static double flatteningDoubt(double apparentAltitudeDeg) {
    if (!(apparentAltitudeDeg >= FLATTENING_LEAST_DEG && apparentAltitudeDeg <= 90)) {
      throw new IllegalArgumentException(
          "apparentAltitudeDeg "
              + apparentAltitudeDeg
              + ": expected "
              + FLATTENING_LEAST_DEG
              + " to 90");
    }
    return Math.hypot(0.05, 0.1 * Math.pow(apparentAltitudeDeg, -1.3));
  }

  private static double limbContraction(double centreDeg, double diameterArcmin, Atmosphere air) {
    double semidiameterDeg = diameterArcmin / 120;
    double lower = saemundssonArcmin(centreDeg - semidiameterDeg);
    double upper = saemundssonArcmin(centreDeg + semidiameterDeg);
    return density(air) * (lower - upper) / diameterArcmin;
  }

  /**
   * Odd about the zenith but for a thousandth of an arcminute, so limbs beyond it are right too.
   */
  private static double saemundssonArcmin(double altitudeDeg) {
    return 1.02 * cot(altitudeDeg + 10.3 / (altitudeDeg + 5.11));
  }

  private static double cot(double deg) {
    return 1 / Math.tan(Math.toRadians(deg));
  }

  private static double density(Atmosphere air) {
    return air.pressureHPa() / 1010 * 283 / (273 + air.temperatureC());
  }

  private static double strength(double altitudeDeg) {
    return Math.min(1, Math.max(0, (altitudeDeg - FADED_DEG) / (FORMULA_LEAST_DEG - FADED_DEG)));
  }

  private static void requireAltitude(String name, double altitudeDeg) {
    if (!(altitudeDeg >= -90 && altitudeDeg <= 90)) {
      throw new IllegalArgumentException(name + " " + altitudeDeg + ": expected -90 to 90");
    }
  }
}

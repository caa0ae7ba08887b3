package org.limbspan.sky;

import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * Air in hydrostatic balance whose temperature falls by 6.5 K a kilometre up to 217 K (ISO
 * 2533:1975) but for one layer on the ground; rays through it by the integral of L. H. Auer and E.
 * M. Standish, Astronomical Journal 119 (2000) 2472, refractivity 0.000000786 P / T with P in
 * pascals. Knows nothing of the formulas it is to check.
 */
final class LayeredAir {

  private static final double EARTH_RADIUS_M = 6_371_000;
  private static final double LAPSE_K_PER_M = 0.0065;
  private static final double STRATOSPHERE_K = 217;
  private static final double GRAVITY_OVER_GAS_CONSTANT = 9.80665 / 287.05;
  private static final double REFRACTIVITY = 7.86e-7;
  private static final int STEPS = 2000;
  private static final double TOP_M = 80_000;
  private static final double SEMIDIAMETER_DEG = 15.5 / 60;

  private final double[] logIndex = new double[STEPS + 1];
  private final double[] logRadius = new double[STEPS + 1];

  private LayeredAir(Atmosphere ground, double layerM, double layerLapseKPerM) {
    double temperatureK = ground.temperatureC() + 273;
    double pressurePa = 100 * ground.pressureHPa();
    double below = 0;
    for (int i = 0; i <= STEPS; i++) {
      double height = TOP_M * Math.pow(i / (double) STEPS, 2);
      double middle = (height + below) / 2;
      double lapse = middle < layerM ? layerLapseKPerM : LAPSE_K_PER_M;
      double next = Math.max(STRATOSPHERE_K, temperatureK - lapse * (height - below));
      pressurePa *=
          Math.exp(-GRAVITY_OVER_GAS_CONSTANT * (height - below) * 2 / (temperatureK + next));
      temperatureK = next;
      logIndex[i] = Math.log1p(REFRACTIVITY * pressurePa / temperatureK);
      logRadius[i] = Math.log(EARTH_RADIUS_M + height);
      below = height;
    }
  }

  static LayeredAir mean(Atmosphere ground) {
    return new LayeredAir(ground, 0, 0);
  }

  /** With a layer on the ground; a negative lapse is an inversion. */
  static LayeredAir layered(Atmosphere ground, double layerM, double lapseKPerKm) {
    return new LayeredAir(ground, layerM, lapseKPerKm / 1000);
  }

  double refractionArcmin(double apparentDeg) {
    double logInvariant =
        logIndex[0] + logRadius[0] + Math.log(Math.cos(Math.toRadians(apparentDeg)));
    double sum = 0;
    double before = Math.toRadians(90 - apparentDeg);
    for (int i = 1; i <= STEPS; i++) {
      double psi = Math.asin(Math.exp(logInvariant - logIndex[i] - logRadius[i]));
      double index = logIndex[i] - logIndex[i - 1];
      double radius = logRadius[i] - logRadius[i - 1];
      sum += index / (index + radius) * (psi - before);
      before = psi;
    }
    return 60 * Math.toDegrees(sum);
  }

  /**
   * 1 - vertical / airless diameter of a disc of 31 arcminutes, without the part that is the same
   * in every direction, which is taken from the zenith.
   */
  double flattening(double apparentDeg) {
    double zenith = Math.toRadians(refractionArcmin(89) / 60) / Math.tan(Math.toRadians(1));
    double centre = trueDeg(apparentDeg);
    double upper = apparentFor(centre + SEMIDIAMETER_DEG, apparentDeg);
    double lower = apparentFor(centre - SEMIDIAMETER_DEG, apparentDeg);
    return 1 - (upper - lower) / (2 * SEMIDIAMETER_DEG) / (1 - zenith);
  }

  private double trueDeg(double apparentDeg) {
    return apparentDeg - refractionArcmin(apparentDeg) / 60;
  }

  private double apparentFor(double trueDeg, double nearDeg) {
    return new BracketingNthOrderBrentSolver(1e-10, 5)
        .solve(
            100,
            apparentDeg -> trueDeg(apparentDeg) - trueDeg,
            Math.max(0, nearDeg - 0.5),
            nearDeg + 0.5);
  }
}

package org.limbspan.cycle;

/**
 * Size at culmination over size at rising, the Moon over the equator, as each hypothesis has it for
 * one latitude.
 *
 * @param latitudeDeg north positive
 * @param nearMoonRatio by {@link NearMoon} at the given height
 * @param orbitingMoonRatio exact for a sphere and the Moon's mean distance of 384,400 km, which
 *     does not change on the way; rising without refraction
 * @param ruleOfThumbPercent Earth's radius times cos(latitude) over distance (common practice, no
 *     source), beside 100 (orbiting ratio - 1)
 */
public record LatitudeRatios(
    double latitudeDeg, double nearMoonRatio, double orbitingMoonRatio, double ruleOfThumbPercent) {

  /** Mean distance of the centres, km, rounded. */
  public static final double MEAN_DISTANCE_KM = 384_400;

  /**
   * The ratios at one latitude.
   *
   * @param latitudeDeg above -90, below 90: at the poles the Moon over the equator never rises
   * @param nearMoonHeightKm above 0
   */
  public static LatitudeRatios at(double latitudeDeg, double nearMoonHeightKm) {
    if (!(latitudeDeg > -90 && latitudeDeg < 90)) {
      throw new IllegalArgumentException(
          "latitudeDeg " + latitudeDeg + ": expected above -90 and below 90");
    }
    if (!(nearMoonHeightKm > 0 && nearMoonHeightKm < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "nearMoonHeightKm " + nearMoonHeightKm + ": expected above 0");
    }
    double near =
        Math.hypot(NearMoon.groundKm(latitudeDeg, 0, 90), nearMoonHeightKm)
            / Math.hypot(NearMoon.groundKm(latitudeDeg, 0, 0), nearMoonHeightKm);
    double q = NearMoon.EARTH_RADIUS_KM / MEAN_DISTANCE_KM;
    double cos = Math.cos(Math.toRadians(latitudeDeg));
    double sin = Math.sin(Math.toRadians(latitudeDeg));
    double atRising = Math.sqrt(1 - q * q);
    double atCulmination = Math.sqrt(1 - q * q * sin * sin) - q * cos;
    return new LatitudeRatios(latitudeDeg, near, atRising / atCulmination, 100 * q * cos);
  }
}

package org.limbspan.scale;

import org.limbspan.sky.Atmosphere;
import org.limbspan.sky.Refraction;
import org.limbspan.sky.StarSight;

/**
 * The angle between two stars, without air and as it is seen through it.
 *
 * <p>Air lifts the lower star more than the upper one, and brings a level pair together on the
 * circles of altitude: by 0.03 percent at any altitude along the horizon, upright by 0.06 percent
 * at 45 degrees, 0.24 at 20 and 0.8 at 10. What is seen is what an image shows, so that a scale
 * taken from it is that of the instrument, as a sheet on the ground gives it.
 *
 * <p>Modelled: {@link Refraction} in the mean air of the site. Accuracy: the formula stands up to 5
 * percent above ray tracing high in the sky, and weather moves the density of the air by as much
 * and more; a tenth of the effect is carried as {@link #airUncertaintyArcmin}. Not modelled: colour
 * (blue stars are lifted by a half percent more than red ones) and slanting layers of air.
 *
 * @param withoutAirArcmin angle without air
 * @param asSeenArcmin angle through the air
 */
public record StarSeparation(double withoutAirArcmin, double asSeenArcmin) {

  /** Nearer the horizon air differs from any formula by more than a tenth. */
  public static final double LEAST_ALTITUDE_DEG = 5;

  private static final double AIR_DOUBT = 0.1;

  public StarSeparation {
    Angles.requirePositive("withoutAirArcmin", withoutAirArcmin);
    Angles.requirePositive("asSeenArcmin", asSeenArcmin);
  }

  /**
   * Of two stars seen from one site at one instant.
   *
   * @throws IllegalArgumentException if they stand in the same direction, or one of them below
   *     {@link #LEAST_ALTITUDE_DEG}
   */
  public static StarSeparation of(StarSight one, StarSight other) {
    requireHighEnough(one.altitudeDeg());
    requireHighEnough(other.altitudeDeg());
    return new StarSeparation(
        60
            * GreatCircle.separationDeg(
                one.azimuthDeg(), one.altitudeDeg(), other.azimuthDeg(), other.altitudeDeg()),
        60
            * GreatCircle.separationDeg(
                one.azimuthDeg(),
                one.apparentAltitudeDeg(),
                other.azimuthDeg(),
                other.apparentAltitudeDeg()));
  }

  /**
   * Of a pair whose middle stands at an altitude, its line at an angle to the horizon.
   *
   * @param withoutAirArcmin their separation without air, above 0 and below 10800
   * @param altitudeDeg true altitude of the middle, such that both stars stand at {@link
   *     #LEAST_ALTITUDE_DEG} or higher, to 90
   * @param slopeDeg 0 for a level pair, 90 for an upright one
   */
  public static StarSeparation at(
      double withoutAirArcmin, double altitudeDeg, double slopeDeg, Atmosphere air) {
    if (!(slopeDeg >= 0 && slopeDeg <= 90)) {
      throw new IllegalArgumentException("slopeDeg " + slopeDeg + ": expected 0 to 90");
    }
    requireHighEnough(altitudeDeg);
    return of(
        end(withoutAirArcmin / 120, altitudeDeg, slopeDeg, air),
        end(-withoutAirArcmin / 120, altitudeDeg, slopeDeg, air));
  }

  /** What is not known of the air's part, as a standard uncertainty: a tenth of it. */
  public double airUncertaintyArcmin() {
    return AIR_DOUBT * Math.abs(asSeenArcmin - withoutAirArcmin);
  }

  /** So far from the middle along the line; upwards for a positive way. */
  private static StarSight end(double wayDeg, double altitudeDeg, double slopeDeg, Atmosphere air) {
    double altitude = Math.toRadians(altitudeDeg);
    double up = Math.sin(Math.toRadians(wayDeg)) * Math.sin(Math.toRadians(slopeDeg));
    double level = Math.sin(Math.toRadians(wayDeg)) * Math.cos(Math.toRadians(slopeDeg));
    double out = Math.cos(Math.toRadians(wayDeg));
    double forward = out * Math.cos(altitude) - up * Math.sin(altitude);
    double height = out * Math.sin(altitude) + up * Math.cos(altitude);
    double endAltitudeDeg = Math.toDegrees(Math.atan2(height, Math.hypot(forward, level)));
    return new StarSight(
        endAltitudeDeg,
        Refraction.apparentStarAltitudeDeg(endAltitudeDeg, air),
        Math.toDegrees(Math.atan2(level, forward)));
  }

  private static void requireHighEnough(double altitudeDeg) {
    if (!(altitudeDeg >= LEAST_ALTITUDE_DEG && altitudeDeg <= 90)) {
      throw new IllegalArgumentException(
          "altitudeDeg " + altitudeDeg + ": expected " + LEAST_ALTITUDE_DEG + " to 90");
    }
  }
}

package org.limbspan.sky;

import java.time.Instant;

/**
 * The Moon as a site sees it at one instant. Diameters are seen from the site, not from the Earth's
 * centre.
 *
 * @param at the instant, UTC
 * @param geocentricDistanceKm from the Earth's centre to the Moon's
 * @param topocentricDistanceKm from the site to the Moon's centre
 * @param horizontalDiameterArcmin diameter parallel to the horizon: that without air, see {@link
 *     Refraction} for the 0.03 percent left out
 * @param verticalDiameterArcmin diameter at right angles to the horizon, flattened by refraction;
 *     equal to the horizontal one at the zenith and far below the horizon
 * @param altitudeDeg altitude of the Moon's centre without refraction, -90 to 90
 * @param apparentAltitudeDeg the same with refraction
 * @param azimuthDeg azimuth from north through east, 0 to 360 (360 excluded)
 * @param illuminatedFraction sunlit part of the disc, 0 to 1
 * @param sunSeparationDeg angle between the centres of Moon and Sun, 0 to 180
 * @param sunAltitudeDeg altitude of the Sun's centre without refraction
 * @param sublunarLatitudeDeg geocentric latitude of the point below the Moon
 * @param sublunarLongitudeDeg longitude of the point below the Moon, -180 to 180, east positive
 */
public record MoonSight(
    Instant at,
    double geocentricDistanceKm,
    double topocentricDistanceKm,
    double horizontalDiameterArcmin,
    double verticalDiameterArcmin,
    double altitudeDeg,
    double apparentAltitudeDeg,
    double azimuthDeg,
    double illuminatedFraction,
    double sunSeparationDeg,
    double sunAltitudeDeg,
    double sublunarLatitudeDeg,
    double sublunarLongitudeDeg) {

  /** The diameter along {@code axis} in arcminutes; for a limb fit the mean of both axes. */
  public double diameterArcmin(Axis axis) {
    return switch (axis) {
      case HORIZONTAL -> horizontalDiameterArcmin;
      case VERTICAL -> verticalDiameterArcmin;
      case LIMB_FIT -> (horizontalDiameterArcmin + verticalDiameterArcmin) / 2;
    };
  }
}

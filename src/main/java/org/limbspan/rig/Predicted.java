package org.limbspan.rig;

/**
 * What is computed for an instant, a site and an axis, as every answer of the service has it.
 *
 * @param diameterArcmin along the axis asked for
 * @param altitudeDeg of the Moon's centre, without refraction
 * @param apparentAltitudeDeg the same with refraction
 * @param azimuthDeg from north through east
 * @param illuminatedFraction 0 to 1
 * @param daysFromPerigee days since the nearest perigee, negative before it
 */
public record Predicted(
    double geocentricDistanceKm,
    double topocentricDistanceKm,
    double diameterArcmin,
    double altitudeDeg,
    double apparentAltitudeDeg,
    double azimuthDeg,
    double illuminatedFraction,
    double sunSeparationDeg,
    double daysFromPerigee) {}

package org.limbspan.sky;

/**
 * Where a star stands at a site.
 *
 * @param altitudeDeg true altitude, without air, -90 to 90
 * @param apparentAltitudeDeg altitude as seen through the air
 * @param azimuthDeg from north through east
 */
public record StarSight(double altitudeDeg, double apparentAltitudeDeg, double azimuthDeg) {}

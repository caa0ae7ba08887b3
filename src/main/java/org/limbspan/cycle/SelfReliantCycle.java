package org.limbspan.cycle;

/**
 * What the readings alone say of the Moon's months, without anybody's table of its distance.
 *
 * @param periodDays mean anomalistic month, days
 * @param eccentricity half-amplitude over mean of the anomalistic line of the size, the definition
 *     of K. Krisciunas (Am. J. Phys. 78, 834, 2010); 0.0544 for the Moon
 * @param swingPercent perigee size over apogee size less 1, mean of the months covered, percent
 * @param apsidalEccentricity (D - d) / (D + d) of the same sizes, the definition of A. E. Roy and
 *     D. Clarke (Astronomy: Principles and Practice, ch. 24); 0.043 to 0.066 from month to month
 * @param monthCount months that went into the mean swing
 * @param distance mean distance, from the growth of the disc with altitude; its inverse is an
 *     average in ln(distance)
 * @param curve the fitted sizes
 * @param noise scatter about them
 */
public record SelfReliantCycle(
    Estimate periodDays,
    Estimate eccentricity,
    Estimate swingPercent,
    Estimate apsidalEccentricity,
    int monthCount,
    MoonDistance distance,
    SizeCurve curve,
    Noise noise,
    int readingCount,
    double spanDays) {}

package org.limbspan.cycle;

import java.time.Instant;
import org.limbspan.sky.Axis;

/**
 * The readings of one pass, one setup and one axis, brought down to a ratio of high over low size.
 *
 * @param passNumber see {@link PassNumber}
 * @param transitAt upper transit by the Moon's mean motion, good to 15 minutes
 * @param lowAt instant of the reading at the least computed altitude
 * @param highAt instant of the reading at the greatest computed altitude
 * @param lowAltitudeDeg altitude of the low reading without refraction
 * @param highAltitudeDeg altitude of the high reading without refraction
 * @param readingCount 2 or more; with more than two, all of them shape the ratio
 * @param observedRatio size at {@code highAt} over size at {@code lowAt}
 * @param uncertainty standard uncertainty of the observed ratio
 * @param predictedRatio the same as computed for the site, along the same axis
 * @param verdict too few where half the predicted effect is less than the uncertainty
 */
public record NightPair(
    long passNumber,
    Instant transitAt,
    Instant lowAt,
    Instant highAt,
    double lowAltitudeDeg,
    double highAltitudeDeg,
    Axis axis,
    int setup,
    int readingCount,
    double observedRatio,
    double uncertainty,
    double predictedRatio,
    Verdict verdict) {}

package org.limbspan.scale;

import java.util.OptionalDouble;

/**
 * The plate scale of a setup and how well its calibrations agree.
 *
 * @param scale weighted mean of the calibrations
 * @param calibrationCount how many there are, 1 or more
 * @param birgeRatio root of chi-squared over its degrees of freedom: near 1 where calibrations
 *     scatter as their uncertainties say; empty for a single calibration
 * @param agreementProbability chance of a scatter at least as wide if all stated uncertainties are
 *     right, 0 to 1; empty for a single calibration
 */
public record MeanScale(
    PlateScale scale,
    int calibrationCount,
    OptionalDouble birgeRatio,
    OptionalDouble agreementProbability) {}

package org.limbspan.cycle;

import java.util.Optional;

/**
 * How much of the predicted change of size the readings show.
 *
 * @param slope regression of observed on predicted relative size, without unit: 1 where the swing
 *     is as predicted; empty where it cannot be had at all
 * @param noise the scatter found on the way; empty with the slope
 */
public record SwingSlope(
    Optional<Estimate> slope, Verdict verdict, int readingCount, Optional<Noise> noise) {}

package org.limbspan.share;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Axis;

/**
 * A reading as it is shared.
 *
 * @param uncertaintyArcmin of the reading alone, without the plate scale's
 * @param altitudeDeg as sighted; null if it was not
 */
record SharedReading(
    Instant takenAt,
    Axis axis,
    double diameterArcmin,
    double uncertaintyArcmin,
    @Nullable Double altitudeDeg,
    int setup) {}

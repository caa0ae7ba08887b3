package org.limbspan.photo;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What one version of the method made of a photograph.
 *
 * @param figures null if it was refused
 * @param refusedBecause null if it was measured
 */
public record MeasuredByMethod(
    int method,
    Instant measuredAt,
    @Nullable DiscFigures figures,
    @Nullable String refusedBecause) {}

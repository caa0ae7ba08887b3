package org.limbspan.photo;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.limbspan.photo.file.PhotoFormat;
import org.limbspan.sky.Axis;

/**
 * A photograph as it is kept.
 *
 * @param sha256 hash of its file, in hexadecimal
 * @param widthPx of the upright picture
 * @param heightPx of the upright picture
 * @param clock who told the instant: {@code sender}, {@code offset} or {@code time-zone}
 * @param axis along which it counts in a reading
 */
public record Photograph(
    long id,
    String sha256,
    int version,
    String fileName,
    PhotoFormat format,
    int widthPx,
    int heightPx,
    Instant takenAt,
    String clock,
    Axis axis,
    @Nullable Double focalLengthMm,
    @Nullable Double exposureS,
    @Nullable Integer iso,
    @Nullable Double fNumber,
    @Nullable String camera,
    Instant enteredAt) {}

package org.limbspan.share;

import java.time.Instant;

/**
 * A guest rig.
 *
 * @param positionDeg to which its position was rounded; 0 for exact
 * @param licence as its package names it
 */
public record Guest(
    long id,
    String slug,
    String name,
    double latitudeDeg,
    double longitudeDeg,
    double elevationM,
    double positionDeg,
    String licence,
    int readingCount,
    Instant loadedAt) {}

package org.limbspan.photo.bracket;

import java.time.Instant;
import java.util.Comparator;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Axis;

/**
 * A measured photograph, along one axis.
 *
 * @param name of its file
 * @param setup number of the setup in force
 * @param diameterPx above 0
 * @param ownUncertaintyPx part of the standard uncertainty that other frames do not share: noise,
 *     seeing; above 0
 * @param sharedUncertaintyPx part that frames of one bracket share: the Moon's relief, the assumed
 *     shape of the edge, what the lit part of the limb leaves open; 0 or more
 * @param exposureStops binary logarithm of the light let in: exposure time by ISO over the square
 *     of the f-number; null if not told
 */
public record Frame(
    long photoId,
    String name,
    Instant takenAt,
    int setup,
    Axis axis,
    double diameterPx,
    double ownUncertaintyPx,
    double sharedUncertaintyPx,
    @Nullable Double exposureStops) {

  /** By time, then by file: an order that does not depend on arrival. */
  public static final Comparator<Frame> BY_TIME =
      Comparator.comparing(Frame::takenAt).thenComparing(Frame::name).thenComparing(Frame::photoId);

  public Frame {
    if (!(diameterPx > 0 && ownUncertaintyPx > 0 && sharedUncertaintyPx >= 0)) {
      throw new IllegalArgumentException(
          "frame of %s px, uncertainty %s and %s px: expected above 0, above 0, 0 or more"
              .formatted(diameterPx, ownUncertaintyPx, sharedUncertaintyPx));
    }
  }

  double varianceAlone() {
    return ownUncertaintyPx * ownUncertaintyPx + sharedUncertaintyPx * sharedUncertaintyPx;
  }
}

package org.limbspan.photo;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.OnConflict;
import org.limbspan.sky.Axis;

/**
 * What is said of photographs when they are sent.
 *
 * @param takenAt counts before the cameras' clocks; null if not told
 * @param takenAtOtherwise counts where the camera's clock tells no instant, or one that cannot be;
 *     null if not told
 * @param axis along which they count
 * @param conflict what to do with a file that is held or was taken back
 */
public record PhotoOptions(
    @Nullable Instant takenAt,
    @Nullable Instant takenAtOtherwise,
    Axis axis,
    Purpose purpose,
    OnConflict conflict) {

  /** What the photographs are sent for. */
  public enum Purpose {
    KEEP,
    /** Measure and store nothing. */
    TRY
  }

  /** Nothing is said. */
  public static final PhotoOptions USUAL =
      new PhotoOptions(null, null, Axis.HORIZONTAL, Purpose.KEEP, OnConflict.REFUSE);
}

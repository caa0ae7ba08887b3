package org.limbspan.photo;

import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.limbspan.limb.SheetOptions;
import org.limbspan.scale.Target;

/**
 * The sheet on a calibration photograph.
 *
 * @param target its tall side and how far away it stands
 * @param otherSideMm its other side, by which a lean is told; null if it is not known
 */
public record SheetTarget(Target target, @Nullable Double otherSideMm) {

  /** Nearer to a square, nobody can tell which side is the tall one. */
  private static final double LEAST_PROPORTION = 1.02;

  /**
   * The sheet.
   *
   * @throws IllegalArgumentException if the other side is not shorter, see {@link #isTallSide}
   */
  public SheetTarget {
    if (otherSideMm != null && !isTallSide(target.lengthMm(), otherSideMm)) {
      throw new IllegalArgumentException(
          "otherSideMm " + otherSideMm + ": expected less than " + target.lengthMm() + " / 1.02");
    }
  }

  /** Whether a side is longer than the other one by so much that nobody takes one for the other. */
  public static boolean isTallSide(double lengthMm, double otherSideMm) {
    return otherSideMm > 0 && lengthMm / otherSideMm >= LEAST_PROPORTION;
  }

  SheetOptions options() {
    return new SheetOptions(
        SheetOptions.standard().leastSidePx(),
        otherSideMm == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(target.lengthMm() / otherSideMm));
  }
}

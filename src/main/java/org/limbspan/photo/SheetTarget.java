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
record SheetTarget(Target target, @Nullable Double otherSideMm) {

  /** Nearer to a square, nobody can tell which side is the tall one. */
  static final double LEAST_PROPORTION = 1.02;

  SheetOptions options() {
    return new SheetOptions(
        SheetOptions.standard().leastSidePx(),
        otherSideMm == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(target.lengthMm() / otherSideMm));
  }
}

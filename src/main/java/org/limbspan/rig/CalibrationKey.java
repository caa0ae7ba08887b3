package org.limbspan.rig;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.limbspan.scale.Calibration;
import org.limbspan.scale.StarPair;

/**
 * What makes two entries one calibration: a photograph of a target is known by its instant, a pair
 * of stars by its separation too, since one photograph holds many pairs.
 */
record CalibrationKey(Instant takenAt, @Nullable Double separationArcmin) {

  static CalibrationKey of(Instant takenAt, Calibration calibration) {
    return new CalibrationKey(
        takenAt, calibration.reference() instanceof StarPair pair ? pair.separationArcmin() : null);
  }
}

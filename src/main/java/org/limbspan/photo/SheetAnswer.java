package org.limbspan.photo;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.Entered;
import org.limbspan.rig.RecordedCalibration;

/**
 * What became of a calibration photograph: refused, or measured and perhaps entered.
 *
 * @param refused null if it was measured
 * @param figures null if it was refused
 * @param entered null if nothing was stored
 */
record SheetAnswer(
    String file,
    @Nullable Instant takenAt,
    @Nullable RefusedPhoto refused,
    @Nullable SheetFigures figures,
    @Nullable Entered<RecordedCalibration> entered) {

  SheetAnswer with(Entered<RecordedCalibration> its) {
    return new SheetAnswer(file, takenAt, refused, figures, its);
  }
}

package org.limbspan.photo;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.Entered;
import org.limbspan.rig.RecordedCalibration;

/**
 * What became of a calibration photograph: refused, or measured and perhaps entered.
 *
 * @param takenAt null if it is not known
 * @param refused null if it was measured
 * @param figures null if it was refused
 * @param entered null if nothing was stored
 */
public record SheetAnswer(
    String file,
    @Nullable Instant takenAt,
    PhotoAnswer.@Nullable Refusal refused,
    @Nullable SheetFigures figures,
    @Nullable Entered<RecordedCalibration> entered) {

  static SheetAnswer refused(String file, @Nullable Instant takenAt, RefusedPhoto why) {
    return new SheetAnswer(file, takenAt, PhotoAnswer.Refusal.of(why), null, null);
  }

  static SheetAnswer measured(String file, Instant takenAt, SheetFigures figures) {
    return new SheetAnswer(file, takenAt, null, figures, null);
  }

  /** What the owner should know before trusting the calibration, in words. */
  public List<String> remarks() {
    return figures == null ? List.of() : SheetWords.remarks(figures);
  }

  SheetAnswer with(Entered<RecordedCalibration> its) {
    return new SheetAnswer(file, takenAt, refused, figures, its);
  }
}

package org.limbspan.rig;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.limbspan.scale.Calibration;
import org.limbspan.scale.PlateScale;

/**
 * A calibration as it stands in the ledger.
 *
 * @param setup number of the setup in which it was taken
 */
public record RecordedCalibration(
    long id,
    Instant takenAt,
    int setup,
    Calibration calibration,
    @Nullable String note,
    Instant enteredAt) {

  /** The plate scale that it gives on its own. */
  public PlateScale plateScale() {
    return calibration.plateScale();
  }
}

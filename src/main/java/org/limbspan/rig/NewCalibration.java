package org.limbspan.rig;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.limbspan.scale.Calibration;

/**
 * A calibration to be entered.
 *
 * @param conflict what to do if another one is held for the same photograph
 * @param line line or place in a batch, for problems; null if it came alone
 */
public record NewCalibration(
    Instant takenAt,
    Calibration calibration,
    @Nullable String note,
    OnConflict conflict,
    @Nullable Integer line) {}

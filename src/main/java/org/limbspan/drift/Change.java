package org.limbspan.drift;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The explanations that compete for the same history. Each is one change after the history so far,
 * and belongs to at most one kind of alert; those without one end what an earlier change began.
 */
enum Change {
  NONE(null),
  STEP(AlertKind.SCALE_STEP),
  DRIFT(AlertKind.SCALE_DRIFT),
  DRIFT_END(null),
  SCATTER(AlertKind.SCATTER_GROWTH),
  SCATTER_END(null),
  CALIBRATION(AlertKind.CALIBRATION_CONFLICT),
  TARGET(AlertKind.CALIBRATION_CONFLICT),
  AXIS(AlertKind.ALTITUDE_TREND),
  FLATTENING(AlertKind.ALTITUDE_TREND),
  CLOCK(AlertKind.CLOCK_SUSPECT),
  CLOCK_END(null),
  SWING(AlertKind.SWING_DEPARTURE),
  RATIO(AlertKind.RATIO_DEPARTURE),
  NEAR_MOON(AlertKind.RATIO_DEPARTURE);

  private final Optional<AlertKind> kind;

  Change(@Nullable AlertKind kind) {
    this.kind = Optional.ofNullable(kind);
  }

  Optional<AlertKind> kind() {
    return kind;
  }
}

package org.limbspan.drift;

import java.util.Optional;

/**
 * The explanations that compete for the same history. Each is one change after the history so far,
 * and belongs to at most one kind of alert; those without one end what an earlier change began. A
 * change counts only when so many readings after its beginning are known: two that agree at least.
 */
enum Change {
  NONE(Optional.empty(), 0),
  STEP(Optional.of(AlertKind.SCALE_STEP), 2),
  DRIFT(Optional.of(AlertKind.SCALE_DRIFT), 3),
  DRIFT_END(Optional.empty(), 3),
  SCATTER(Optional.of(AlertKind.SCATTER_GROWTH), 4),
  SCATTER_END(Optional.empty(), 4),
  CALIBRATION(Optional.of(AlertKind.CALIBRATION_CONFLICT), 2),
  TARGET(Optional.of(AlertKind.CALIBRATION_CONFLICT), 2),
  AXIS(Optional.of(AlertKind.ALTITUDE_TREND), 2),
  AXIS_END(Optional.empty(), 2),
  FLATTENING(Optional.of(AlertKind.ALTITUDE_TREND), 2),
  CLOCK(Optional.of(AlertKind.CLOCK_SUSPECT), 2),
  CLOCK_END(Optional.empty(), 2),
  SWING(Optional.of(AlertKind.SWING_DEPARTURE), 2),
  RATIO(Optional.of(AlertKind.RATIO_DEPARTURE), 2),
  NEAR_MOON(Optional.of(AlertKind.RATIO_DEPARTURE), 2);

  private final Optional<AlertKind> kind;
  private final int leastReadings;

  Change(Optional<AlertKind> kind, int leastReadings) {
    this.kind = kind;
    this.leastReadings = leastReadings;
  }

  Optional<AlertKind> kind() {
    return kind;
  }

  int leastReadings() {
    return leastReadings;
  }
}

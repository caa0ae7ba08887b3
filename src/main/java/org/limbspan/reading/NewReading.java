package org.limbspan.reading;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.OnConflict;
import org.limbspan.sky.Axis;

/**
 * A reading to be entered.
 *
 * @param takenAt instant, to the microsecond
 * @param frames diameters of the single frames in the unit of the diameter; empty if not told
 * @param conflict what to do if another value is held for that instant and axis
 * @param line line or place in a batch, for problems; null if it came alone
 */
public record NewReading(
    Instant takenAt,
    Axis axis,
    Diameter diameter,
    List<Double> frames,
    Circumstances circumstances,
    OnConflict conflict,
    @Nullable Integer line) {

  public NewReading {
    frames = List.copyOf(frames);
  }

  ReadingKey key() {
    return new ReadingKey(takenAt, axis);
  }
}

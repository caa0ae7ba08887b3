package org.limbspan.reading;

import java.time.Instant;
import java.util.List;
import org.limbspan.sky.Axis;

/**
 * A reading as the ledger holds it.
 *
 * @param version 1, or more if it superseded others
 */
public record RecordedReading(
    long id,
    Instant takenAt,
    Axis axis,
    int version,
    Diameter diameter,
    List<Double> frames,
    Circumstances circumstances,
    Instant enteredAt) {

  public RecordedReading {
    frames = List.copyOf(frames);
  }
}

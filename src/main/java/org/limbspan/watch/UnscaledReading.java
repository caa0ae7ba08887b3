package org.limbspan.watch;

import org.limbspan.reading.RecordedReading;
import org.limbspan.sky.MoonSight;

/**
 * A reading that has no size in arcminutes, since its setup has no calibration.
 *
 * @param setup number of that setup
 */
record UnscaledReading(RecordedReading reading, int setup, MoonSight sight) {

  /** Arcminutes per unit of length if the Moon is as computed. */
  double arcminPerUnit() {
    return sight.diameterArcmin(reading.axis()) / reading.diameter().value();
  }
}

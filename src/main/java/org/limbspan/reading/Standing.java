package org.limbspan.reading;

import java.util.Collections;
import java.util.List;

/**
 * The readings of a rig that stand, oldest first.
 *
 * @param standardised as angles beside the computed Moon
 * @param unscaled lengths that no calibration of their setup makes an angle
 */
public record Standing(List<StandardisedReading> standardised, List<RecordedReading> unscaled) {

  public Standing {
    standardised = Collections.unmodifiableList(standardised);
    unscaled = Collections.unmodifiableList(unscaled);
  }

  /** How many there are. */
  public int count() {
    return standardised.size() + unscaled.size();
  }
}

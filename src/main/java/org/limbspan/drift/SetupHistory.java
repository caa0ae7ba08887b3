package org.limbspan.drift;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.limbspan.cycle.Observation;

/**
 * What is known of one setup. The order of the lists does not matter, and the same entry twice
 * counts once.
 *
 * @param number the setup's number in the rig's history, from 0
 * @param from start of the setup; empty where it is open
 * @param to end of the setup, excluded; empty where it is open
 */
public record SetupHistory(
    int number,
    Optional<Instant> from,
    Optional<Instant> to,
    List<CalibrationPoint> calibrations,
    List<Observation> observations) {

  public SetupHistory {
    calibrations = List.copyOf(calibrations);
    observations = List.copyOf(observations);
  }
}

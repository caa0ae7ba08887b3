package org.limbspan.reading;

import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.limbspan.platform.Violation;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.Setup;
import org.limbspan.scale.LengthUnit;

/**
 * The unit of each setup that a batch touches: that of the readings held, else that of the
 * calibrations, else that of the batch's own earliest length there, so that the order of its lines
 * does not matter.
 */
final class SetupUnits {

  private final InstrumentHistory history;
  private final Function<Setup, Optional<LengthUnit>> unitOfReadings;
  private final Map<Integer, LengthUnit> units = new HashMap<>();

  SetupUnits(InstrumentHistory history, Function<Setup, Optional<LengthUnit>> unitOfReadings) {
    this.history = history;
    this.unitOfReadings = unitOfReadings;
  }

  void settleBy(List<NewReading> readings) {
    readings.stream()
        .filter(reading -> reading.diameter().unit().length().isPresent())
        .sorted(
            Comparator.comparing(NewReading::takenAt)
                .thenComparing(reading -> reading.diameter().unit()))
        .forEach(
            reading ->
                units.computeIfAbsent(
                    setup(reading.takenAt()).number(),
                    number -> unit(setup(reading.takenAt()), reading.diameter().unit())));
  }

  /** What is wrong with a reading's unit, after {@link #settleBy}. */
  Optional<Violation> violation(NewReading reading) {
    Optional<LengthUnit> its = reading.diameter().unit().length();
    Setup setup = setup(reading.takenAt());
    LengthUnit settled = units.get(setup.number());
    if (its.isEmpty() || settled == null || its.get() == settled) {
      return Optional.empty();
    }
    return Optional.of(
        new Violation(
            "diameter" + its.get().suffix(),
            reading.diameter().value(),
            "a length in " + settled.symbol() + ", the unit of setup " + setup.number()));
  }

  private LengthUnit unit(Setup setup, DiameterUnit ofBatch) {
    return unitOfReadings
        .apply(setup)
        .or(() -> history.scaleOf(setup).map(mean -> mean.scale().unit()))
        .or(ofBatch::length)
        .orElseThrow();
  }

  private Setup setup(Instant at) {
    return history.setupAt(at);
  }
}

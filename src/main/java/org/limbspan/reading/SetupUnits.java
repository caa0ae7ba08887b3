package org.limbspan.reading;

import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
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

  private final Supplier<InstrumentHistory> reader;
  private @Nullable InstrumentHistory history;
  private final Function<Setup, Optional<LengthUnit>> unitOfReadings;
  private final Map<Integer, LengthUnit> units = new HashMap<>();

  /**
   * @param reader of the instrument's history; not asked for angles, which need none
   */
  SetupUnits(
      Supplier<InstrumentHistory> reader, Function<Setup, Optional<LengthUnit>> unitOfReadings) {
    this.reader = reader;
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
    if (its.isEmpty()) {
      return Optional.empty();
    }
    Setup setup = setup(reading.takenAt());
    LengthUnit settled = units.get(setup.number());
    if (settled == null || its.get() == settled) {
      return Optional.empty();
    }
    String expected = "a length in " + settled.symbol() + ", the unit of setup ";
    return Optional.of(
        new Violation(
                "diameter" + its.get().suffix(),
                reading.diameter().value(),
                expected + setup.number())
            .onPages(expected + setup.numberOnPages()));
  }

  private LengthUnit unit(Setup setup, DiameterUnit ofBatch) {
    return unitOfReadings
        .apply(setup)
        .or(() -> history().scaleOf(setup).map(mean -> mean.scale().unit()))
        .or(ofBatch::length)
        .orElseThrow();
  }

  private Setup setup(Instant at) {
    return history().setupAt(at);
  }

  private InstrumentHistory history() {
    if (history == null) {
      history = reader.get();
    }
    return history;
  }
}

package org.limbspan.dashboard;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.rig.Setup;
import org.limbspan.watch.InferredReadings;
import org.limbspan.watch.InferredReadings.InferredSetup;

/**
 * Setups, calibrations and plate scales of a rig.
 *
 * @param inferred setups whose scale is taken from the computed Moon
 */
record InstrumentFacts(InstrumentHistory history, List<InferredSetup> inferred) {

  InstrumentFacts {
    inferred = List.copyOf(inferred);
  }

  static InstrumentFacts of(Rig rig, Rigs rigs, InferredReadings readings) {
    InstrumentHistory history = rigs.history(rig);
    return new InstrumentFacts(history, readings.of(history));
  }

  Optional<InferredSetup> inferredOf(Setup setup) {
    return inferred.stream().filter(each -> each.setup() == setup.number()).findFirst();
  }

  /** The calibrations of a setup, oldest first. */
  List<RecordedCalibration> calibrationsOf(Setup setup) {
    return history.calibrations().stream()
        .filter(each -> each.setup() == setup.number())
        .sorted(Comparator.comparing(RecordedCalibration::takenAt))
        .toList();
  }

  /** The unit in which the latest scale is told; pixels where there is none. */
  String unitSymbol() {
    Optional<String> calibrated =
        history.calibrations().stream()
            .max(Comparator.comparing(RecordedCalibration::takenAt))
            .map(each -> each.plateScale().unit().symbol());
    return calibrated.orElseGet(
        () -> inferred.isEmpty() ? "px" : inferred.get(inferred.size() - 1).unitSymbol());
  }
}

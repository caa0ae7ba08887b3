package org.limbspan.rig;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;

/** Derives what stands of a rig's setups and calibrations from the facts entered. */
@Component
class InstrumentHistories {

  private final SetupRepository setups;
  private final CalibrationRepository calibrations;

  InstrumentHistories(SetupRepository setups, CalibrationRepository calibrations) {
    this.setups = setups;
    this.calibrations = calibrations;
  }

  InstrumentHistory of(Rig rig) {
    List<Setup> standing = setups(rig.id());
    return new InstrumentHistory(rig, standing, calibrations(rig.id(), standing));
  }

  /** Standing setups by time. */
  List<Setup> setups(long rigId) {
    return numbered(setups.findStanding(rigId));
  }

  /** Standing calibrations by time, each in its setup of {@code standing}. */
  List<RecordedCalibration> calibrations(long rigId, List<Setup> standing) {
    return calibrations.findStanding(rigId).stream()
        .map(each -> each.toRecord(InstrumentHistory.setupAt(standing, each.takenAt()).number()))
        .toList();
  }

  /** Each setup lasts until the next one starts. */
  private static List<Setup> numbered(List<SetupEntity> byTime) {
    List<Setup> numbered = new ArrayList<>();
    for (int i = 0; i < byTime.size(); i++) {
      Optional<Instant> endedAt =
          i + 1 < byTime.size() ? byTime.get(i + 1).startedAt() : Optional.empty();
      numbered.add(byTime.get(i).toSetup(i, endedAt));
    }
    return numbered;
  }
}

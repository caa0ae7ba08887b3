package org.limbspan.rig;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.limbspan.scale.LengthUnit;
import org.springframework.stereotype.Component;

/** Knows which units of length every setup of a rig holds: one, or none yet. */
@Component
class UnitGuard {

  private final InstrumentHistories histories;
  private final UnitsInUse readings;

  UnitGuard(InstrumentHistories histories, UnitsInUse readings) {
    this.histories = histories;
    this.readings = readings;
  }

  /** Units of the calibrations and readings of each setup, by its number, as the ledger stands. */
  Map<Integer, Set<LengthUnit>> unitsBySetup(long rigId, List<Setup> setups) {
    Map<Integer, Set<LengthUnit>> units = new HashMap<>();
    for (Setup setup : setups) {
      Set<LengthUnit> its = EnumSet.noneOf(LengthUnit.class);
      its.addAll(readings.within(rigId, setup));
      units.put(setup.number(), its);
    }
    for (RecordedCalibration each : histories.calibrations(rigId, setups)) {
      units
          .computeIfAbsent(each.setup(), number -> EnumSet.noneOf(LengthUnit.class))
          .add(each.calibration().measured().unit());
    }
    return units;
  }
}

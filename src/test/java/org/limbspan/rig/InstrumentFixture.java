package org.limbspan.rig;

import java.util.List;

/** Instruments as the ledger would tell them, for tests of other modules. */
public final class InstrumentFixture {

  private InstrumentFixture() {}

  public static InstrumentHistory of(
      Rig rig, List<Setup> setups, List<RecordedCalibration> calibrations) {
    return new InstrumentHistory(rig, setups, calibrations);
  }
}

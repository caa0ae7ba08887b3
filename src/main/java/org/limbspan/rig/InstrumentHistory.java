package org.limbspan.rig;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toList;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.limbspan.scale.Calibration;
import org.limbspan.scale.MeanScale;
import org.limbspan.scale.ScaleAverage;

/**
 * All that is held about a rig's instrument: its setups by time, its calibrations by time, and the
 * plate scale of each setup. Withdrawn facts are left out.
 */
public final class InstrumentHistory {

  private final Rig rig;
  private final List<Setup> setups;
  private final List<RecordedCalibration> calibrations;
  private final Map<Integer, MeanScale> scales = new LinkedHashMap<>();

  InstrumentHistory(Rig rig, List<Setup> setups, List<RecordedCalibration> calibrations) {
    this.rig = rig;
    this.setups = List.copyOf(setups);
    this.calibrations = List.copyOf(calibrations);
    Map<Integer, List<Calibration>> bySetup =
        calibrations.stream()
            .collect(
                groupingBy(
                    RecordedCalibration::setup,
                    mapping(RecordedCalibration::calibration, toList())));
    bySetup.forEach((setup, its) -> scales.put(setup, ScaleAverage.of(its)));
  }

  public Rig rig() {
    return rig;
  }

  /** By time; the first is open from the beginning. */
  public List<Setup> setups() {
    return setups;
  }

  /** By time. */
  public List<RecordedCalibration> calibrations() {
    return calibrations;
  }

  /** The setup in force at an instant. */
  public Setup setupAt(Instant at) {
    return setupAt(setups, at);
  }

  /** The plate scale of a setup; empty if it has no calibration. */
  public Optional<MeanScale> scaleOf(Setup setup) {
    return Optional.ofNullable(scales.get(setup.number()));
  }

  static Setup setupAt(List<Setup> setups, Instant at) {
    int first = 0;
    int last = setups.size() - 1;
    while (first < last) {
      int middle = (first + last + 1) / 2;
      if (setups.get(middle).hasStartedBy(at)) {
        first = middle;
      } else {
        last = middle - 1;
      }
    }
    return setups.get(first);
  }
}

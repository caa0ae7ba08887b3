package org.limbspan.watch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.SetupScale;
import org.limbspan.drift.AlertKind;
import org.limbspan.drift.CalibrationPoint;
import org.limbspan.drift.Figures;
import org.limbspan.drift.Finding;
import org.limbspan.drift.SetupHistory;

/**
 * The stretches of time in which the scale stood still: setups, parted at each step that was found.
 * Each has the scale of the calibrations that fall into it; one that was found wrong, or that was
 * taken while the scale drifted, does not count.
 */
final class Stretches {

  private final List<Finding> findings;
  private final Map<Integer, Weighted> scales = new TreeMap<>();

  Stretches(List<SetupHistory> setups, List<Finding> findings) {
    this.findings = List.copyOf(findings);
    for (SetupHistory setup : setups) {
      for (CalibrationPoint point : setup.calibrations()) {
        if (isSound(setup.number(), point)) {
          scales
              .computeIfAbsent(number(setup.number(), point.takenAt()), key -> new Weighted())
              .add(point);
        }
      }
    }
  }

  /** The reading at the scale of its own stretch, numbered by the stretch. */
  Observation place(Observation observation) {
    int stretch = number(observation.setup(), observation.takenAt());
    double correction =
        isDisturbed(observation.setup())
            ? Optional.ofNullable(scales.get(stretch)).map(Weighted::mean).orElse(0.0)
            : 0;
    return stretch == observation.setup() && correction == 0
        ? observation
        : Observations.with(
            observation, stretch, observation.observedArcmin() * Math.exp(correction));
  }

  /** Scales of the stretches that have a calibration, without what all calibrations share. */
  List<SetupScale> scales() {
    List<SetupScale> result = new ArrayList<>();
    scales.forEach(
        (stretch, weighted) -> result.add(new SetupScale(stretch, weighted.uncertainty())));
    return result;
  }

  /** Setups and stretches are numbered together: a step adds one to all that comes after it. */
  private int number(int setup, Instant at) {
    long stepsBefore =
        findings.stream()
            .filter(finding -> finding.kind() == AlertKind.SCALE_STEP)
            .filter(step -> !step.onsetAt().isAfter(at))
            .count();
    return setup + (int) stepsBefore;
  }

  private boolean isDisturbed(int setup) {
    return findings.stream()
        .filter(finding -> finding.setup() == setup)
        .anyMatch(
            finding ->
                finding.kind() == AlertKind.SCALE_STEP
                    || finding.kind() == AlertKind.SCALE_DRIFT
                    || finding.kind() == AlertKind.CALIBRATION_CONFLICT);
  }

  private boolean isSound(int setup, CalibrationPoint point) {
    return findings.stream()
        .filter(finding -> finding.setup() == setup)
        .noneMatch(finding -> spoils(finding, point));
  }

  private static boolean spoils(Finding finding, CalibrationPoint point) {
    if (finding.figures() instanceof Figures.Calibration wrong) {
      return wrong.takenAt().equals(Optional.of(point.takenAt()));
    }
    return finding.kind() == AlertKind.SCALE_DRIFT && point.takenAt().isAfter(finding.onsetAt());
  }

  /** Mean of the logarithms of scales, weighted by their independent uncertainties. */
  private static final class Weighted {

    private double weights;
    private double sum;

    void add(CalibrationPoint point) {
      double weight = 1 / (point.independentUncertainty() * point.independentUncertainty());
      weights += weight;
      sum += weight * point.logScale();
    }

    double mean() {
      return sum / weights;
    }

    double uncertainty() {
      return 1 / Math.sqrt(weights);
    }
  }
}

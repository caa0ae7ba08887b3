package org.limbspan.watch;

import static java.util.stream.Collectors.groupingBy;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.Sighted;
import org.limbspan.drift.CalibrationPoint;
import org.limbspan.drift.RigHistory;
import org.limbspan.drift.SetupHistory;
import org.limbspan.reading.RecordedReading;
import org.limbspan.reading.StandardisedReading;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.rig.Setup;
import org.limbspan.scale.Calibration;
import org.limbspan.scale.MeanScale;
import org.limbspan.scale.Target;

/** Turns the ledger of a rig into what the mathematics takes. */
final class RigEvidence {

  private final InstrumentHistory history;
  private final List<Observation> observations;
  private final List<Integer> inferredScales;

  private RigEvidence(
      InstrumentHistory history, List<Observation> observations, List<Integer> inferredScales) {
    this.history = history;
    this.observations = List.copyOf(observations);
    this.inferredScales = List.copyOf(inferredScales);
  }

  /**
   * @param readings those in a setup with a plate scale, and those entered in arcminutes
   * @param unscaled the others
   * @param known those of this rig as they were last
   */
  static RigEvidence of(
      InstrumentHistory history,
      List<StandardisedReading> readings,
      List<UnscaledReading> unscaled,
      KnownObservations known) {
    List<Observation> observations = new ArrayList<>();
    readings.forEach(reading -> observations.add(observation(reading)));
    Map<Integer, List<UnscaledReading>> bySetup =
        unscaled.stream().collect(groupingBy(UnscaledReading::setup));
    bySetup.values().forEach(its -> observations.addAll(InferredScale.observations(its)));
    observations.sort(Comparator.comparing(Observation::takenAt));
    return new RigEvidence(
        history, known.same(observations), bySetup.keySet().stream().sorted().toList());
  }

  /** Every reading that has a size in arcminutes, by time. */
  List<Observation> observations() {
    return observations;
  }

  /** Numbers of the setups without calibration, whose scale the Moon itself had to give. */
  List<Integer> inferredScales() {
    return inferredScales;
  }

  /**
   * Standard uncertainty over scale of what the rig's calibrations share: the sheet, the tape. That
   * of the setup which knows it least.
   */
  double commonScaleUncertainty() {
    return history.setups().stream()
        .map(history::scaleOf)
        .flatMap(Optional::stream)
        .map(MeanScale::scale)
        .mapToDouble(scale -> scale.commonUncertainty() / scale.arcsecPerUnit())
        .max()
        .orElse(0);
  }

  RigHistory rigHistory() {
    List<SetupHistory> setups =
        history.setups().stream()
            .map(
                setup ->
                    new SetupHistory(
                        setup.number(),
                        setup.startedAt(),
                        setup.endedAt(),
                        calibrationPoints(setup),
                        observations.stream()
                            .filter(observation -> observation.setup() == setup.number())
                            .toList()))
            .toList();
    return new RigHistory(history.rig().site(), history.rig().timeZone(), setups);
  }

  private List<CalibrationPoint> calibrationPoints(Setup setup) {
    Optional<MeanScale> mean = history.scaleOf(setup);
    if (mean.isEmpty()) {
      return List.of();
    }
    double setupScale = mean.get().scale().arcsecPerUnit();
    return history.calibrations().stream()
        .filter(recorded -> recorded.setup() == setup.number())
        .map(recorded -> point(recorded, setupScale))
        .toList();
  }

  private static CalibrationPoint point(RecordedCalibration recorded, double setupScale) {
    Calibration calibration = recorded.calibration();
    double pixels = calibration.measured().relativeUncertainty();
    double logScale = Math.log(calibration.plateScale().arcsecPerUnit() / setupScale);
    if (calibration.reference() instanceof Target target) {
      double distance = target.distanceUncertaintyM() / target.distanceM();
      double length = target.lengthUncertaintyMm() / target.lengthMm();
      return new CalibrationPoint(
          recorded.takenAt(), logScale, Math.hypot(pixels, distance), length);
    }
    double common =
        calibration.plateScale().commonUncertainty() / calibration.plateScale().arcsecPerUnit();
    return new CalibrationPoint(recorded.takenAt(), logScale, pixels, common);
  }

  private static Observation observation(StandardisedReading standardised) {
    return new Observation(
        standardised.reading().takenAt(),
        standardised.reading().axis(),
        standardised.diameterArcmin(),
        standardised.relativeUncertainty(),
        standardised.sight(),
        standardised.setup(),
        sighted(standardised.reading()));
  }

  static Sighted sighted(RecordedReading reading) {
    return new Sighted(
        optional(reading.circumstances().altitudeDeg()),
        optional(reading.circumstances().azimuthDeg()));
  }

  private static OptionalDouble optional(@Nullable Double value) {
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}

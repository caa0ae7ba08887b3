package org.limbspan.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.Sighted;
import org.limbspan.drift.CalibrationPoint;
import org.limbspan.drift.RigHistory;
import org.limbspan.drift.SetupHistory;
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

  static RigEvidence of(InstrumentHistory history, List<StandardisedReading> readings) {
    List<Observation> observations = new ArrayList<>();
    List<Integer> inferred = new ArrayList<>();
    for (Setup setup : history.setups()) {
      List<StandardisedReading> its =
          readings.stream().filter(reading -> reading.setup() == setup.number()).toList();
      OptionalDouble scale = InferredScale.of(its);
      boolean needed = its.stream().anyMatch(reading -> reading.diameterArcmin().isEmpty());
      if (needed && scale.isPresent()) {
        inferred.add(setup.number());
      }
      for (StandardisedReading reading : its) {
        OptionalDouble arcmin =
            reading.diameterArcmin().isPresent()
                ? reading.diameterArcmin()
                : InferredScale.arcmin(reading, scale);
        arcmin.ifPresent(value -> observations.add(observation(reading, value)));
      }
    }
    return new RigEvidence(history, observations, inferred);
  }

  /** Every reading that has a size in arcminutes, by time. */
  List<Observation> observations() {
    return observations;
  }

  /** Numbers of the setups without calibration, whose scale the Moon itself had to give. */
  List<Integer> inferredScales() {
    return inferredScales;
  }

  /** Standard uncertainty that all plate scales of the rig share, relative; the largest of them. */
  double commonScaleUncertainty() {
    return history.setups().stream()
        .map(history::scaleOf)
        .flatMap(Optional::stream)
        .map(MeanScale::scale)
        .mapToDouble(scale -> scale.relativeUncertainty())
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

  private static Observation observation(StandardisedReading reading, double arcmin) {
    return new Observation(
        reading.takenAt(),
        reading.axis(),
        arcmin,
        reading.relativeUncertainty(),
        reading.sight(),
        reading.setup(),
        new Sighted(reading.sightedAltitudeDeg(), reading.sightedAzimuthDeg()));
  }
}

package org.limbspan.watch;

import java.util.List;
import org.limbspan.cycle.Observation;
import org.limbspan.reading.RecordedReading;

/**
 * The plate scale of a setup without calibration, taken from the computed Moon: the median of
 * computed size over measured length. What rests on it is not independent of the prediction: its
 * absolute scale says nothing of the Moon; its swing and ratio do.
 */
final class InferredScale {

  private InferredScale() {}

  /** The readings of one setup at its inferred scale. */
  static List<Observation> observations(List<UnscaledReading> readings) {
    double scale = medianArcminPerUnit(readings);
    return readings.stream().map(reading -> observation(reading, scale)).toList();
  }

  /** Median over the readings of one setup. */
  static double medianArcminPerUnit(List<UnscaledReading> readings) {
    double[] scales =
        readings.stream().mapToDouble(UnscaledReading::arcminPerUnit).sorted().toArray();
    int middle = scales.length / 2;
    return scales.length % 2 == 1 ? scales[middle] : (scales[middle - 1] + scales[middle]) / 2;
  }

  private static Observation observation(UnscaledReading unscaled, double arcminPerUnit) {
    RecordedReading reading = unscaled.reading();
    return new Observation(
        reading.takenAt(),
        reading.axis(),
        reading.diameter().value() * arcminPerUnit,
        reading.diameter().relativeUncertainty(),
        unscaled.sight(),
        unscaled.setup(),
        RigEvidence.sighted(reading));
  }
}

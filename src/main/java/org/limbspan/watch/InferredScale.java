package org.limbspan.watch;

import java.util.List;
import java.util.OptionalDouble;
import org.limbspan.reading.StandardisedReading;

/**
 * The plate scale of a setup without calibration, taken from the computed Moon: the median of
 * computed size over measured length. What rests on it is not independent of the prediction: its
 * absolute scale says nothing of the Moon, its swing and ratio do.
 */
final class InferredScale {

  private InferredScale() {}

  /** Arcminutes per unit of length; empty without a reading that lacks its size. */
  static OptionalDouble of(List<StandardisedReading> readings) {
    double[] scales =
        readings.stream()
            .filter(reading -> reading.diameterArcmin().isEmpty())
            .mapToDouble(
                reading -> reading.sight().diameterArcmin(reading.axis()) / reading.diameter())
            .sorted()
            .toArray();
    if (scales.length == 0) {
      return OptionalDouble.empty();
    }
    int middle = scales.length / 2;
    return OptionalDouble.of(
        scales.length % 2 == 1 ? scales[middle] : (scales[middle - 1] + scales[middle]) / 2);
  }

  static OptionalDouble arcmin(StandardisedReading reading, OptionalDouble arcminPerUnit) {
    return arcminPerUnit.isPresent()
        ? OptionalDouble.of(reading.diameter() * arcminPerUnit.getAsDouble())
        : OptionalDouble.empty();
  }
}

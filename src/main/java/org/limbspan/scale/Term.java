package org.limbspan.scale;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.limbspan.scale.SharedError.Source;

/**
 * One calibration as a term of a mean.
 *
 * @param log natural logarithm of its plate scale
 * @param independent relative standard uncertainty from its own image
 * @param shared relative standard uncertainty by what else is uncertain
 */
record Term(double log, double independent, Map<Source, Double> shared) {

  /** Sums run in the order of the sources, so that every process comes to the same bits. */
  Term {
    shared = Collections.unmodifiableMap(new LinkedHashMap<>(shared));
  }

  static Term of(Calibration calibration) {
    List<SharedError> errors = calibration.reference().sharedErrors();
    return new Term(
        Math.log(calibration.plateScale().arcsecPerUnit()),
        calibration.measured().relativeUncertainty(),
        inOrder(errors));
  }

  private static Map<Source, Double> inOrder(List<SharedError> errors) {
    Map<Source, Double> shared = new LinkedHashMap<>();
    errors.forEach(error -> shared.put(error.source(), error.relativeUncertainty()));
    return shared;
  }

  Set<Source> sources() {
    return shared.keySet();
  }

  double precision() {
    return 1 / (independent * independent);
  }

  double sharedVariance(Predicate<Source> chosen) {
    return shared.entrySet().stream()
        .filter(each -> chosen.test(each.getKey()))
        .mapToDouble(each -> each.getValue() * each.getValue())
        .sum();
  }
}

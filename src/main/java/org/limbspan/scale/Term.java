package org.limbspan.scale;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.limbspan.scale.SharedError.Source;

/**
 * One calibration as a term of a mean.
 *
 * @param log natural logarithm of its plate scale
 * @param independent relative standard uncertainty from its own image
 * @param shared relative standard uncertainty by what else is uncertain
 */
record Term(double log, double independent, Map<Source, Double> shared) {

  Term {
    shared = Map.copyOf(shared);
  }

  static Term of(Calibration calibration) {
    List<SharedError> errors = calibration.reference().sharedErrors();
    return new Term(
        Math.log(calibration.plateScale().arcsecPerUnit()),
        calibration.measured().relativeUncertainty(),
        errors.stream()
            .collect(Collectors.toMap(SharedError::source, SharedError::relativeUncertainty)));
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

package org.limbspan.watch;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.limbspan.watch.NightsResult.Night;

/**
 * The mean of night ratios, in logarithms, each weighted by the inverse variance of the observed
 * one.
 *
 * @param ratio high over low size
 * @param uncertainty standard uncertainty of the mean of the observed ratios
 */
record MeanRatio(double ratio, double uncertainty) {

  static Optional<MeanRatio> observed(List<Night> nights) {
    return of(nights, Night::observedRatio);
  }

  static Optional<MeanRatio> predicted(List<Night> nights) {
    return of(nights, Night::predictedRatio);
  }

  private static Optional<MeanRatio> of(List<Night> nights, ToDoubleFunction<Night> ratio) {
    double weights = 0;
    double sum = 0;
    for (Night night : nights) {
      double relative = night.uncertainty() / night.observedRatio();
      double weight = 1 / (relative * relative);
      weights += weight;
      sum += weight * Math.log(ratio.applyAsDouble(night));
    }
    if (nights.isEmpty()) {
      return Optional.empty();
    }
    double mean = Math.exp(sum / weights);
    return Optional.of(new MeanRatio(mean, mean / Math.sqrt(weights)));
  }
}

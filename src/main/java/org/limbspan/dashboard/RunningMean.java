package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.List;
import org.limbspan.watch.NightsResult.Night;

/** Night ratios taken together one after the other, each weighted by what it can tell. */
final class RunningMean {

  private RunningMean() {}

  /**
   * A night pair, and the mean of it and all before it.
   *
   * @param observed weighted mean of the observed ratios
   * @param uncertainty standard uncertainty of that mean
   * @param predicted mean of the predicted ratios by the same weights
   */
  record At(Night night, double observed, double uncertainty, double predicted) {}

  /** The means, in the order of the nights. */
  static List<At> of(List<Night> nights) {
    List<At> means = new ArrayList<>();
    double weights = 0;
    double observed = 0;
    double predicted = 0;
    for (Night night : nights) {
      double relative = night.uncertainty() / night.observedRatio();
      double weight = 1 / (relative * relative);
      weights += weight;
      observed += weight * Math.log(night.observedRatio());
      predicted += weight * Math.log(night.predictedRatio());
      double mean = Math.exp(observed / weights);
      means.add(new At(night, mean, mean / Math.sqrt(weights), Math.exp(predicted / weights)));
    }
    return means;
  }
}

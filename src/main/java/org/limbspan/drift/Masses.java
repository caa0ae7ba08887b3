package org.limbspan.drift;

import java.util.EnumMap;
import java.util.Map;

/** ln of the evidence by kind of change, and for no change at all. */
final class Masses {

  private final Map<Change, Double> logs = new EnumMap<>(Change.class);
  private double none;
  private double all;

  /**
   * @param none ln of the evidence for no change
   */
  Masses(double none) {
    this.none = none;
    this.all = none;
  }

  /** Counts a track: for its change, or for none where too little was seen of it. */
  void add(Track track) {
    double log = track.logEvidence();
    if (track.counts()) {
      logs.merge(track.hypothesis.change(), log, Noise::logSum);
    } else {
      none = Noise.logSum(none, log);
    }
    all = Noise.logSum(all, log);
  }

  /** ln of the odds that something changed. */
  double logOdds() {
    double some = Double.NEGATIVE_INFINITY;
    for (double log : logs.values()) {
      some = Noise.logSum(some, log);
    }
    return some - none;
  }

  double probability(Change change) {
    return Math.exp(logs.getOrDefault(change, Double.NEGATIVE_INFINITY) - all);
  }

  /** Probability that nothing changed. */
  double chance() {
    return Math.exp(none - all);
  }
}

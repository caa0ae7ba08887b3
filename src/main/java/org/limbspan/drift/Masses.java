package org.limbspan.drift;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The evidence by kind of change, and for no change at all; each over a reference, lest it leave
 * the range of numbers.
 */
final class Masses {

  private static final double LEAST_PROBABILITY = 0.005;

  private final Map<Change, Double> sums = new EnumMap<>(Change.class);
  private final Map<Cause, Double> causes = new EnumMap<>(Cause.class);
  private final double reference;
  private final Map<Change, Hypothesis> hypotheses = new EnumMap<>(Change.class);
  private final Map<Change, Double> peaks = new EnumMap<>(Change.class);
  private double none;
  private double all;

  /**
   * @param reference ln of the evidence that counts as 1
   */
  Masses(double reference) {
    this.reference = reference;
  }

  /** Counts the tracks that suppose no change. */
  void addWithout(List<Track> tracks) {
    for (Track track : tracks) {
      none += Math.exp(track.logEvidence() - reference);
    }
    all = none;
  }

  /** Counts the tracks of a family: for their change, or for none where too little was seen. */
  void addFamily(List<Track> family) {
    double counted = 0;
    double young = 0;
    Track likeliest = family.get(0);
    for (Track track : family) {
      double mass = Math.exp(track.logEvidence() - reference);
      if (track.counts()) {
        counted += mass;
        boolean larger = !likeliest.counts() || track.logEvidence() > likeliest.logEvidence();
        likeliest = larger ? track : likeliest;
      } else {
        young += mass;
      }
    }
    if (counted > 0) {
      Change change = likeliest.hypothesis.change();
      sums.merge(change, counted, Double::sum);
      causes.merge(likeliest.hypothesis.cause(), counted, Double::sum);
      if (likeliest.logEvidence() > peaks.getOrDefault(change, Double.NEGATIVE_INFINITY)) {
        peaks.put(change, likeliest.logEvidence());
        hypotheses.put(change, likeliest.hypothesis);
      }
    }
    none += young;
    all += counted + young;
  }

  /** ln of the odds that something changed. */
  double logOdds() {
    double some = 0;
    for (double sum : sums.values()) {
      some += sum;
    }
    return Math.log(some) - Math.log(none);
  }

  /** The likeliest track's hypothesis among those of a change. */
  Optional<Hypothesis> best(Change change) {
    return Optional.ofNullable(hypotheses.get(change));
  }

  /** The likeliest change. */
  Change likeliest() {
    return sums.entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .map(Map.Entry::getKey)
        .orElse(Change.NONE);
  }

  double probability(Change change) {
    return sums.getOrDefault(change, 0.0) / all;
  }

  /** The causes and how likely each is, the likeliest first; chance is one of them. */
  List<LikelyCause> likelyCauses() {
    Map<Cause, Double> shares = new EnumMap<>(causes);
    shares.merge(Cause.CHANCE, none, Double::sum);
    return shares.entrySet().stream()
        .map(each -> new LikelyCause(each.getKey(), Math.min(1, each.getValue() / all)))
        .filter(each -> each.probability() >= LEAST_PROBABILITY)
        .sorted(Comparator.comparingDouble(LikelyCause::probability).reversed())
        .toList();
  }

  /** Probability that nothing changed. */
  double chance() {
    return none / all;
  }
}

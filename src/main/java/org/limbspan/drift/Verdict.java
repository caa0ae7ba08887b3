package org.limbspan.drift;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which change explains best. Changes of the same kind of alert stand together against the others.
 *
 * @param probability that something changed at all
 */
record Verdict(Hypothesis hypothesis, double probability, List<LikelyCause> causes) {

  static Verdict of(Masses masses) {
    Map<AlertKind, Double> kinds = new EnumMap<>(AlertKind.class);
    for (Change each : Change.values()) {
      each.kind().ifPresent(kind -> kinds.merge(kind, masses.probability(each), Double::sum));
    }
    Change best = masses.likeliest();
    double most = 0;
    for (Change each : Change.values()) {
      double own = masses.probability(each);
      double together = each.kind().map(kind -> kinds.getOrDefault(kind, own)).orElse(own);
      boolean larger = together > most || (together == most && own > masses.probability(best));
      if (own > 0 && larger) {
        most = together;
        best = each;
      }
    }
    Hypothesis hypothesis = masses.best(best).orElseThrow();
    return new Verdict(hypothesis, 1 - masses.chance(), masses.likelyCauses());
  }

  Optional<AlertKind> kind() {
    return hypothesis.change().kind();
  }
}

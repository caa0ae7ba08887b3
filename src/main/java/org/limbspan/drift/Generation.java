package org.limbspan.drift;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The tracks that suppose the same number of changes. Their number stays small: of neighbouring
 * onsets long ago one stands for both, with the evidence of both.
 */
final class Generation {

  /** Onsets may lie apart by this share of their age. */
  private static final double SPACING = 0.12;

  private final Map<String, List<Track>> families = new LinkedHashMap<>();

  void add(Track track) {
    families.computeIfAbsent(track.hypothesis.family(), family -> new ArrayList<>()).add(track);
  }

  void take(Fact fact, double nightShare) {
    for (List<Track> family : families.values()) {
      for (Track track : family) {
        track.take(fact, nightShare);
      }
    }
  }

  boolean isEmpty() {
    return families.values().stream().allMatch(List::isEmpty);
  }

  /** ln of the evidence for all tracks. */
  double logMass() {
    double sum = Double.NEGATIVE_INFINITY;
    for (List<Track> family : families.values()) {
      for (Track track : family) {
        sum = Noise.logSum(sum, track.logEvidence());
      }
    }
    return sum;
  }

  /** The evidence by kind of change, against a generation with one change less. */
  Masses against(Generation without) {
    Masses masses = new Masses(without.logMass());
    for (List<Track> family : families.values()) {
      family.forEach(masses::add);
    }
    return masses;
  }

  Collection<Track> tracks() {
    List<Track> all = new ArrayList<>();
    families.values().forEach(all::addAll);
    return all;
  }

  /** The track with the greatest evidence; of equals the first. */
  Optional<Track> best() {
    Track best = null;
    for (List<Track> family : families.values()) {
      for (Track track : family) {
        if (best == null || track.logEvidence() > best.logEvidence()) {
          best = track;
        }
      }
    }
    return Optional.ofNullable(best);
  }

  /** Drops the tracks whose evidence is below a bound. */
  void prune(double least) {
    families.values().forEach(family -> family.removeIf(track -> track.logEvidence() < least));
    families.values().removeIf(List::isEmpty);
  }

  /** Lets one of neighbouring onsets stand for both. */
  void thin(int now) {
    families.values().forEach(family -> thin(family, now));
  }

  private static void thin(List<Track> family, int now) {
    for (int i = family.size() - 2; i > 0; i--) {
      int gap = family.get(i + 1).hypothesis.onset() - family.get(i - 1).hypothesis.onset();
      if (gap <= SPACING * (now - family.get(i).hypothesis.onset())) {
        Track gone = family.remove(i);
        Track before = family.get(i - 1);
        Track after = family.get(i);
        Track heir = before.logEvidence() >= after.logEvidence() ? before : after;
        heir.addEvidence(gone.logEvidence());
      }
    }
  }
}

package org.limbspan.drift;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The tracks that suppose the same number of changes. Their number stays small: of neighbouring
 * onsets long ago one stands for both, with the evidence of both, and what found no support in a
 * long time is dropped.
 */
final class Generation {

  /** Onsets may lie apart by this share of their age in facts. */
  private static final double SPACING = 0.25;

  /** ln of evidence, against the best, below which a track is dropped. */
  private static final double HOPELESS = 25;

  /** The same for tracks that are old. */
  private static final double STALE = 5;

  private static final int OLD_READINGS = 64;
  private static final double OLD_DAYS = 200;

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

  /** ln of the evidence of the best track; minus infinity where there is none. */
  double bestLog() {
    return best().map(Track::logEvidence).orElse(Double.NEGATIVE_INFINITY);
  }

  /** The evidence by kind of change, against a generation with one change less. */
  Masses against(Generation without) {
    Masses masses = new Masses(Math.max(bestLog(), without.bestLog()));
    without.families.values().forEach(masses::addWithout);
    families.values().forEach(masses::addFamily);
    return masses;
  }

  List<Track> tracks() {
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

  /**
   * Drops the tracks that have no hope.
   *
   * @param reference ln of the evidence that they are measured by
   */
  void prune(double reference, Fact now) {
    for (List<Track> family : families.values()) {
      family.removeIf(track -> track.logEvidence() < reference - allowance(track, now));
    }
    families.values().removeIf(List::isEmpty);
  }

  private static double allowance(Track track, Fact now) {
    boolean old =
        track.hypothesis.onset() > 0
            && track.readingsSince() > OLD_READINGS
            && now.day - track.hypothesis.day() > OLD_DAYS;
    return old ? STALE : HOPELESS;
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

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
  private static final double SPACING = 0.15;

  /** ln of evidence, against the best, below which a track is dropped. */
  private static final double HOPELESS = 25;

  /** The same for tracks that are old. */
  private static final double STALE = 5;

  /** Within this of the best a track is kept whatever its neighbours. */
  private static final double RIVAL = 4;

  private static final int OLD_READINGS = 64;
  private static final double OLD_DAYS = 200;

  private final Map<String, List<Track>> families = new LinkedHashMap<>();

  Generation snapshot() {
    Generation same = new Generation();
    families.forEach(
        (name, family) ->
            same.families.put(
                name, new ArrayList<>(family.stream().map(Track::snapshot).toList())));
    return same;
  }

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

  /**
   * Lets one of neighbouring onsets stand for both, unless it may yet be the right one.
   *
   * @param reference ln of the evidence that tracks are measured by
   */
  void thin(double reference, int now) {
    families.values().forEach(family -> thin(family, reference, now));
  }

  private static void thin(List<Track> family, double reference, int now) {
    for (int i = family.size() - 2; i > 0; i--) {
      int gap = family.get(i + 1).hypothesis.onset() - family.get(i - 1).hypothesis.onset();
      Track middle = family.get(i);
      boolean close = gap <= SPACING * (now - middle.hypothesis.onset());
      if (close && middle.logEvidence() < reference - RIVAL) {
        Track gone = family.remove(i);
        Track before = family.get(i - 1);
        Track after = family.get(i);
        Track heir = before.logEvidence() >= after.logEvidence() ? before : after;
        heir.addEvidence(gone.logEvidence());
      }
    }
  }
}

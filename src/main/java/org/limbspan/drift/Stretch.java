package org.limbspan.drift;

import java.util.List;

/**
 * The facts from which a change is estimated: those since the change before it and up to the change
 * after it, but at most 400 each side of its likely onset.
 *
 * @param facts all facts of the setup
 * @param whole where the stretch lies within them
 * @param onsets where the onset may be
 * @param start the track that knows nothing of the stretch yet, but looks at it as the changes
 *     before it demand
 */
record Stretch(List<Fact> facts, Range whole, Range onsets, Track start, double nightShare) {

  private static final int REACH = 400;
  private static final int ONSET_REACH = 60;

  static Stretch around(int onset, Range between, List<Fact> facts, Track start, double share) {
    Range whole =
        new Range(Math.max(between.from(), onset - REACH), Math.min(between.to(), onset + REACH));
    Range onsets =
        new Range(
            Math.max(whole.from() + 1, onset - ONSET_REACH),
            Math.min(whole.to(), onset + ONSET_REACH));
    return new Stretch(facts, whole, onsets, start, share);
  }

  /** Follows all facts from {@code from} on. */
  void follow(Track track, int from) {
    for (int i = from; i < whole.to(); i++) {
      track.take(facts.get(i), nightShare);
    }
  }

  /** The readings from {@code from} on. */
  List<Fact> readingsFrom(int from) {
    return facts.subList(from, whole.to()).stream().filter(Fact::isReading).toList();
  }

  Fact last() {
    return facts.get(whole.to() - 1);
  }
}

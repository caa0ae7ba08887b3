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

  static final int REACH = 400;
  static final int ONSET_REACH = 60;

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

package org.limbspan.drift;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A change for which the evidence was enough, with how its explanations fared since. */
final class Confirmed {

  /** Index of the reading with which the evidence was enough. */
  final int evidence;

  final Generation tracks;
  private final List<Integer> indices = new ArrayList<>();
  private final List<Masses> notes = new ArrayList<>();

  Confirmed(int evidence, Generation tracks) {
    this.evidence = evidence;
    this.tracks = tracks;
  }

  void note(int index, Masses masses) {
    indices.add(index);
    notes.add(masses);
  }

  /** Index of the first fact after the change, by its likeliest track. */
  int onset() {
    return tracks.best().orElseThrow().hypothesis.onset();
  }

  /** The likeliest track of a kind. */
  Track best(AlertKind kind) {
    return tracks.tracks().stream()
        .filter(track -> track.hypothesis.change().kind().equals(Optional.of(kind)))
        .max(Comparator.comparingDouble(Track::logEvidence))
        .orElseThrow();
  }

  /** How the explanations stood before the fact of an index, or with the first evidence. */
  Masses notesBefore(int index) {
    int i = notes.size() - 1;
    while (i > 0 && indices.get(i) >= index) {
      i--;
    }
    return notes.get(i);
  }
}

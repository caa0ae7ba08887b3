package org.limbspan.drift;

import java.util.ArrayList;
import java.util.List;

/** A change for which the evidence was enough, with how its explanations fared since. */
final class Confirmed {

  /** Index of the reading with which the evidence was enough. */
  final int evidence;

  private final List<Integer> indices = new ArrayList<>();
  private final List<Masses> notes = new ArrayList<>();

  Confirmed(int evidence) {
    this.evidence = evidence;
  }

  void note(int index, Masses masses) {
    indices.add(index);
    notes.add(masses);
  }

  /** Index of the first fact after the change, by what explains it best by now. */
  int onset() {
    return Verdict.of(notes.get(notes.size() - 1)).hypothesis().onset();
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

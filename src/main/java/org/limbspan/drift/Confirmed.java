package org.limbspan.drift;

import java.util.ArrayList;
import java.util.List;

/** A change for which the evidence was enough, with how its explanations fared since. */
final class Confirmed {

  /** More than this need not be known of the past: a later change is seen sooner. */
  private static final int MOST_NOTES = 1000;

  /** How the explanations stood after the fact of an index. */
  private record Note(int index, Masses masses) {}

  /** Index of the reading with which the evidence was enough. */
  final int evidence;

  private final List<Note> notes;

  Confirmed(int evidence) {
    this(evidence, new ArrayList<>());
  }

  private Confirmed(int evidence, List<Note> notes) {
    this.evidence = evidence;
    this.notes = notes;
  }

  Confirmed snapshot() {
    return new Confirmed(evidence, new ArrayList<>(notes));
  }

  void note(int index, Masses masses) {
    if (notes.size() == MOST_NOTES) {
      notes.subList(0, MOST_NOTES / 2).clear();
    }
    notes.add(new Note(index, masses));
  }

  /** Index of the first fact after the change, by what explains it best by now. */
  int onset() {
    return Verdict.of(notes.get(notes.size() - 1).masses()).hypothesis().onset();
  }

  /** How the explanations stood before the fact of an index, or as early as is known. */
  Masses notesBefore(int index) {
    int i = notes.size() - 1;
    while (i > 0 && notes.get(i).index() >= index) {
      i--;
    }
    return notes.get(i).masses();
  }
}

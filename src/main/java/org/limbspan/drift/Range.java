package org.limbspan.drift;

/** Indices from {@code from} to before {@code to}. */
record Range(int from, int to) {

  Range {
    if (from < 0 || to < from) {
      throw new IllegalArgumentException("range " + from + " to " + to);
    }
  }
}

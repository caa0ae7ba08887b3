package org.limbspan.drift;

/** Indices from {@code from} to before {@code to}. */
record Range(int from, int to) {

  Range {
    if (from < 0 || to < from) {
      throw new IllegalArgumentException("range " + from + " to " + to);
    }
  }

  /** The part of this range within a reach of an index. */
  Range around(int index, int reach) {
    int first = Math.min(to, Math.max(from, index - reach));
    return new Range(first, Math.max(first, Math.min(to, index + reach)));
  }
}

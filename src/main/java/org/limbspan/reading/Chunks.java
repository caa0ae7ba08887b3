package org.limbspan.reading;

import java.util.ArrayList;
import java.util.List;

/** Parts of a long list, in order. */
final class Chunks {

  private Chunks() {}

  static <T> List<List<T>> of(List<T> list, int size) {
    List<List<T>> chunks = new ArrayList<>();
    for (int from = 0; from < list.size(); from += size) {
      chunks.add(list.subList(from, Math.min(list.size(), from + size)));
    }
    return chunks;
  }
}

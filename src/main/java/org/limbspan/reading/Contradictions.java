package org.limbspan.reading;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.limbspan.rig.OnConflict;

/**
 * Instants and axes for which a batch has several diameters without saying which is to count. All
 * of them are refused: which line came first must not matter.
 */
final class Contradictions {

  private Contradictions() {}

  static Set<ReadingKey> in(List<NewReading> readings) {
    Map<ReadingKey, Diameter> first = new HashMap<>();
    Set<ReadingKey> found = new HashSet<>();
    for (NewReading reading : readings) {
      if (reading.conflict() == OnConflict.REFUSE) {
        Diameter other = first.putIfAbsent(reading.key(), reading.diameter());
        if (other != null && !other.equals(reading.diameter())) {
          found.add(reading.key());
        }
      }
    }
    return found;
  }
}

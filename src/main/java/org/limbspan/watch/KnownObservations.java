package org.limbspan.watch;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.limbspan.cycle.Observation;

/**
 * The observations of a rig as they were looked at last. Those that are equal are given again as
 * the same objects, which makes comparing them with what is remembered of them quick.
 */
final class KnownObservations {

  private List<Observation> last = List.of();

  List<Observation> same(List<Observation> now) {
    List<Observation> same = new ArrayList<>(now);
    for (int i = 0; i < Math.min(last.size(), same.size()); i++) {
      if (last.get(i).equals(same.get(i))) {
        same.set(i, last.get(i));
      }
    }
    last = Collections.unmodifiableList(same);
    return last;
  }
}

package org.limbspan.cycle;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Site;

/** The passes of a rig's readings as they were numbered last; the same are not numbered again. */
final class KnownPasses {

  private List<Observation> observations = List.of();
  private List<Long> passes = List.of();
  private @Nullable Site site;

  synchronized List<Long> of(List<Observation> now, Site where) {
    int known = where.equals(site) ? Math.min(now.size(), observations.size()) : 0;
    List<Long> numbers = new ArrayList<>(now.size());
    for (int i = 0; i < now.size(); i++) {
      numbers.add(
          i < known && isThat(now.get(i), observations.get(i))
              ? passes.get(i)
              : Long.valueOf(PassNumber.of(now.get(i).sight(), where)));
    }
    observations = now;
    passes = List.copyOf(numbers);
    site = where;
    return passes;
  }

  @SuppressWarnings("ReferenceEquality") // quick, and no more than a saving
  private static boolean isThat(Observation one, Observation other) {
    return one == other;
  }
}

package org.limbspan.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.limbspan.cycle.NightPair;

/** The nights of a rig as they were put last; the pairs that are the same are not put again. */
final class KnownNights {

  private List<NightPair> pairs = List.of();
  private List<NightsResult.Night> nights = List.of();

  /**
   * @param putting makes nights of pairs, each by itself
   */
  List<NightsResult.Night> of(
      List<NightPair> now, Function<List<NightPair>, List<NightsResult.Night>> putting) {
    int same = 0;
    while (same < Math.min(pairs.size(), now.size()) && isThat(pairs.get(same), now.get(same))) {
      same++;
    }
    List<NightsResult.Night> all = new ArrayList<>(nights.subList(0, same));
    all.addAll(putting.apply(now.subList(same, now.size())));
    pairs = now;
    nights = List.copyOf(all);
    return nights;
  }

  @SuppressWarnings("ReferenceEquality") // quick, and no more than a saving
  private static boolean isThat(NightPair one, NightPair other) {
    return one == other;
  }
}

package org.limbspan.cycle;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Apsis;

/** The months as they came out last, each with all that it depends on. */
final class MonthMemory {

  private final Map<Instant, Kept> months = new HashMap<>();

  /** All that the swing of a month depends on. */
  record Key(List<Apsis> apsides, List<Observation> readings, Optional<Noise> noise) {}

  private record Kept(Key key, MonthSwing month) {}

  /** Forgets all months but those that begin at these instants. */
  synchronized void keepOnly(Set<Instant> perigees) {
    months.keySet().retainAll(perigees);
  }

  synchronized MonthSwing of(Key key, Supplier<MonthSwing> maker) {
    Instant from = key.apsides().get(0).at();
    @Nullable Kept known = months.get(from);
    if (known == null || !known.key().equals(key)) {
      known = new Kept(key, maker.get());
      months.put(from, known);
    }
    return known.month();
  }
}

package org.limbspan.cycle;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * The last value that was worked out and what it was worked out from. Asked for with the same it is
 * given again; with another it is worked out anew. So it never changes an answer.
 */
final class Remembered<K, V> {

  private @Nullable Kept<K, V> kept;

  private record Kept<K, V>(K key, V value) {}

  /**
   * The value of {@code key}.
   *
   * @param key everything that the value depends on
   */
  synchronized V of(K key, Supplier<V> maker) {
    Kept<K, V> known = kept;
    if (known == null || !known.key().equals(key)) {
      known = new Kept<>(key, maker.get());
      kept = known;
    }
    return known.value();
  }
}

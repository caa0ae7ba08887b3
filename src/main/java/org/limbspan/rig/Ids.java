package org.limbspan.rig;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Identifiers that the database gives. */
final class Ids {

  private Ids() {}

  static long of(@Nullable Long id) {
    return Objects.requireNonNull(id, "not stored yet");
  }
}

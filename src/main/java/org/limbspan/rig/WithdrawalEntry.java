package org.limbspan.rig;

import java.util.Optional;
import java.util.Set;
import org.limbspan.intake.Entry;

/** Reads why something is taken back. */
final class WithdrawalEntry {

  private WithdrawalEntry() {}

  static String reason(Entry entry) {
    entry.refuseBeside(Set.of("reason"));
    Optional<String> reason = entry.text("reason", 2000);
    entry.requireSound();
    return reason.orElseThrow();
  }
}

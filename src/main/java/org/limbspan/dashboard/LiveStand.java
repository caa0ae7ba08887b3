package org.limbspan.dashboard;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * The stand of a ledger and its judgement in one word. A page carries that of which it was made,
 * and is told the present one when it begins to listen: what happened between is not missed.
 */
final class LiveStand {

  private LiveStand() {}

  /** Compared as it is, never read. The ledger keeps times to the microsecond. */
  static String of(long revision, Instant judgedAt) {
    return revision + "-" + judgedAt.truncatedTo(ChronoUnit.MILLIS).toEpochMilli();
  }
}

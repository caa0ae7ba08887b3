package org.limbspan.platform.reads;

import java.time.Instant;

/**
 * How a standby does.
 *
 * @param why in words for a person; empty while it is read
 * @param since when it came to do so
 */
record StandbyStand(Use use, String why, Instant since) {

  /** What it is good for. */
  enum Use {
    READ,
    BEHIND,
    AWAY
  }
}

package org.limbspan.reading;

import java.util.List;
import org.limbspan.platform.Violation;

/**
 * What became of a batch.
 *
 * @param received entries in the batch: the sum of the next three
 * @param stored entries that are new in the ledger
 * @param alreadyHeld entries that the ledger held
 * @param refused entries that could not be taken
 * @param rejected what was wrong with them, by line; the first thousand
 */
public record IntakeReport(
    int received, int stored, int alreadyHeld, int refused, List<Violation> rejected) {

  public IntakeReport {
    rejected = List.copyOf(rejected);
  }
}

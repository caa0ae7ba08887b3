package org.limbspan.reading;

import org.limbspan.rig.LedgerChange;

/** A reading was taken back. */
public record ReadingWithdrawn(long rigId, String slug) implements LedgerChange {}

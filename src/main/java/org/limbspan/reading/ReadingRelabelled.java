package org.limbspan.reading;

import org.limbspan.rig.LedgerChange;

/** A reading was given another axis. */
public record ReadingRelabelled(long rigId, String slug) implements LedgerChange {}

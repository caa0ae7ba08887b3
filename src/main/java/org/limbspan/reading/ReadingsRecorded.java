package org.limbspan.reading;

import org.limbspan.rig.LedgerChange;

/** Readings were entered. */
public record ReadingsRecorded(long rigId, String slug) implements LedgerChange {}

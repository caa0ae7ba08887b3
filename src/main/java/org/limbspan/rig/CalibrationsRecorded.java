package org.limbspan.rig;

/** Calibrations were entered. */
public record CalibrationsRecorded(long rigId, String slug) implements LedgerChange {}

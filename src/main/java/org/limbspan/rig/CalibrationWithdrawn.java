package org.limbspan.rig;

/** A calibration was taken back. */
public record CalibrationWithdrawn(long rigId, String slug) implements LedgerChange {}

package org.limbspan.rig;

/** A setup was taken back. */
public record SetupWithdrawn(long rigId, String slug) implements LedgerChange {}

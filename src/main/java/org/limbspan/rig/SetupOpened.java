package org.limbspan.rig;

/** A setup was entered. */
public record SetupOpened(long rigId, String slug) implements LedgerChange {}

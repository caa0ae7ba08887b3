package org.limbspan.rig;

/** A rig was entered. */
public record RigDescribed(long rigId, String slug) implements LedgerChange {}

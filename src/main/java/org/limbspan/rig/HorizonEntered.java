package org.limbspan.rig;

/** A rig's own horizon was entered, or taken back. */
public record HorizonEntered(long rigId, String slug) implements LedgerChange {}

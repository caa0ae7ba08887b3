package org.limbspan.watch;

/**
 * A judgement found what the one before had not found. Published within the transaction that writes
 * the judgement.
 */
public record AlertRaised(long rigId, Alert alert) {}

package org.limbspan.watch;

/**
 * Enough readings later than an answered alert agree. Published within the transaction that writes
 * the judgement.
 */
public record AlertSettled(long rigId, Alert alert) {}

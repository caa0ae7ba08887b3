package org.limbspan.watch;

/**
 * An alert that nobody had answered is found no more. Published within the transaction that writes
 * the judgement.
 *
 * @param alert as it last was
 */
public record AlertWithdrawn(long rigId, Alert alert) {}

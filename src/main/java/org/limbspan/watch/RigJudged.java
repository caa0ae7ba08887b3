package org.limbspan.watch;

/**
 * A rig was judged.
 *
 * @param revision the ledger revision that the judgement reflects
 */
public record RigJudged(long rigId, long revision) {}

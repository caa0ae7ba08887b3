package org.limbspan.watch;

import java.time.Instant;

/**
 * What the ledger of a rig says.
 *
 * @param judgedAt when it was computed
 * @param pending whether facts are in the ledger that it does not yet reflect
 */
public record Judgement(
    Instant judgedAt,
    boolean pending,
    CycleResult cycle,
    NightsResult nights,
    HypothesesResult hypotheses,
    OwnResult own) {}

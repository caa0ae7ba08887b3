package org.limbspan.watch;

/** All that a judgement says besides its alerts, as it is kept. */
record JudgementDocument(CycleResult cycle, NightsResult nights, HypothesesResult hypotheses) {

  /** Raised whenever the computation changes; judgements of another version are made anew. */
  static final int METHOD = 2;
}

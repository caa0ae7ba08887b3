package org.limbspan.watch;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * All that a judgement says besides its alerts, as it is kept.
 *
 * @param own absent in a judgement of an earlier method, until it is made anew
 */
record JudgementDocument(
    CycleResult cycle, NightsResult nights, HypothesesResult hypotheses, @Nullable OwnResult own) {

  /** Raised whenever the computation changes; judgements of another version are made anew. */
  static final int METHOD = 5;

  /** From this method on the nights are kept beside the document. */
  static final int FIRST_IN_PARTS = 4;

  /** The same with other nights. */
  JudgementDocument withNights(List<NightsResult.Night> list) {
    return new JudgementDocument(cycle, new NightsResult(list, nights.summary()), hypotheses, own);
  }
}

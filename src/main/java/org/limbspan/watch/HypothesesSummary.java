package org.limbspan.watch;

import java.util.List;
import org.limbspan.cycle.Observation;
import org.limbspan.sky.Site;

/** Puts the comparison of the hypotheses into the shape of the answer. */
final class HypothesesSummary {

  private HypothesesSummary() {}

  static HypothesesResult of(List<Observation> observations, Site site, RigEvidence evidence) {
    return new HypothesesResult(List.of(), null, List.of());
  }
}

package org.limbspan.watch;

import java.util.List;
import org.limbspan.rig.Rig;

/** What is said of a rig before its first judgement. */
final class Unjudged {

  private static final String TOO_FEW = "too-few";

  private Unjudged() {}

  static Judgement of(Rig rig) {
    return new Judgement(
        rig.createdAt(),
        true,
        new CycleResult(
            0, new CycleResult.Swing(null, null, TOO_FEW), null, null, null, List.of(), List.of()),
        new NightsResult(
            List.of(),
            new NightsResult.Summary(0, null, null, null, null, null, null, null, TOO_FEW)),
        new HypothesesResult(List.of(), null, List.of(), List.of()),
        OwnResult.NONE);
  }
}

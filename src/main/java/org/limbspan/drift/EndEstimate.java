package org.limbspan.drift;

import java.time.Instant;

/** When something ended that had begun before. */
final class EndEstimate {

  private static final double NEW_SHAPE = 1.5;

  private EndEstimate() {}

  static Instant ofDrift(Stretch stretch) {
    return new Onsets(stretch, (track, fact) -> track.endTrend(fact.day - fact.gapDays / 2)).at();
  }

  static Instant ofScatter(Stretch stretch) {
    return new Onsets(
            stretch, (track, fact) -> track.resetNoise(1 / Priors.SCATTER_FACTOR, NEW_SHAPE))
        .at();
  }

  static Instant ofLens(Stretch stretch) {
    return new Onsets(stretch, Lens.AS_LOGGED, (track, fact) -> {}).at();
  }
}

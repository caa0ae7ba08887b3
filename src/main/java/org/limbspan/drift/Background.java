package org.limbspan.drift;

import java.util.List;

/**
 * How a stretch is to be looked at after the changes before it.
 *
 * @param targetVariance of the error that all calibrations share
 * @param drifting whether the level goes on drifting
 */
record Background(Lens lens, NoisePrior noise, double targetVariance, boolean drifting) {

  /** Wide enough for any level: the stretch tells it. */
  private static final double LEVEL = 1;

  private static final double RATE_PER_DAY = 0.02 / 30;
  private static final NoisePrior AFTER_SCATTER = new NoisePrior(1.5, 9);

  /** The track that knows nothing of the stretch yet. */
  Track start(double day) {
    Track track = Track.start(Hypothesis.none(lens), noise, LEVEL, targetVariance);
    if (drifting) {
      track.startTrend(day, Priors.square(RATE_PER_DAY));
    }
    return track;
  }

  Background after(Hypothesis hypothesis) {
    Lens next = hypothesis.lens();
    return switch (hypothesis.change()) {
      case DRIFT -> new Background(next, noise, targetVariance, true);
      case DRIFT_END -> new Background(next, noise, targetVariance, false);
      case SCATTER -> new Background(next, AFTER_SCATTER, targetVariance, drifting);
      default -> new Background(next, noise, targetVariance, drifting);
    };
  }

  Stretch stretch(Hypothesis hypothesis, Range between, List<Fact> facts, double nightShare) {
    int onset = hypothesis.onset();
    Range whole = onset == 0 ? between : between.around(onset, Stretch.REACH);
    Range onsets =
        new Range(Math.min(whole.from() + 1, whole.to()), whole.to())
            .around(onset, Stretch.ONSET_REACH);
    Track start = start(facts.get(whole.from()).day);
    return new Stretch(facts, whole, onsets, start, nightShare);
  }
}

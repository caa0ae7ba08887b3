package org.limbspan.drift;

import java.util.Optional;

/**
 * What a new setup may inherit from the one before, since a new zoom mends neither the clock nor
 * the habit of measuring. It is tried beside the supposition that all is well; if it holds on it is
 * no news.
 *
 * @param lens how the readings were to be taken at the end of the setup before
 * @param effect what they went with: swing, ratio or flattening
 * @param targetWrong whether all calibrations shared a wrong target
 */
record Carried(Lens lens, Optional<Change> effect, boolean targetWrong) {

  static final Carried NOTHING = new Carried(Lens.AS_LOGGED, Optional.empty(), false);

  boolean isNothing() {
    return equals(NOTHING);
  }

  Carried after(Hypothesis hypothesis) {
    return switch (hypothesis.change()) {
      case SWING, RATIO, FLATTENING ->
          new Carried(lens, Optional.of(hypothesis.change()), targetWrong);
      case TARGET -> new Carried(lens, effect, true);
      default -> new Carried(hypothesis.lens(), effect, targetWrong);
    };
  }

  /** The track of a new setup for which all this still holds. */
  Track start(NoisePrior noise, double targetVariance) {
    double wrong = targetWrong ? Priors.square(Priors.TARGET_WRONG) : 0;
    Track track =
        Track.start(
            isNothing() ? Hypothesis.none(lens) : Hypothesis.inherited(lens),
            noise,
            Priors.square(Priors.LEVEL),
            targetVariance + wrong);
    if (lens instanceof NearMoonLens) {
      track.addVariance(Track.TARGET, 1);
    }
    if (lens instanceof AxisLens) {
      track.startEffect(lens::offset, Priors.square(Priors.AXIS_SLACK));
    }
    effect.ifPresent(change -> startEffect(track, change));
    return track;
  }

  private static void startEffect(Track track, Change change) {
    switch (change) {
      case SWING -> track.startEffect(Regressor.SWING, Priors.square(Priors.SWING_SIZE));
      case RATIO -> track.startEffect(Regressor.RATIO, Priors.square(Priors.WILD_RATIO_SIZE));
      case FLATTENING ->
          track.startEffect(Regressor.FLATTENING, Priors.square(Priors.FLATTENING_SIZE));
      default ->
          throw new IllegalArgumentException("effect " + change + ": expected none but three");
    }
  }
}

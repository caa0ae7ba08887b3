package org.limbspan.drift;

/** Height and moment of a step. */
final class StepEstimate {

  /** Wide enough to draw no step towards 0. */
  private static final double HEIGHT = 1;

  private static final double LEAST_SUPPORT = 2;

  private StepEstimate() {}

  static Estimated of(Stretch stretch) {
    Onsets onsets =
        new Onsets(
            stretch,
            (track, fact) ->
                track.startEffect(Regressor.stepFrom(fact.day), Priors.square(HEIGHT)));
    double size = 100 * onsets.mean(Track.EFFECT);
    double uncertainty = 100 * onsets.uncertainty(Track.EFFECT);
    double before = 100 * onsets.mean(Track.LEVEL);
    double beforeUncertainty = 100 * onsets.uncertainty(Track.LEVEL);
    Figures.Step figures =
        new Figures.Step(
            before, beforeUncertainty, before + size, uncertainty, supported(stretch, onsets));
    return Estimated.of(onsets, size, uncertainty, figures);
  }

  /**
   * Whether the calibrations after the onset part from those before by more than twice the
   * uncertainty of that, and in the same sense.
   */
  private static boolean supported(Stretch stretch, Onsets onsets) {
    double sumBefore = 0;
    double weightBefore = 0;
    double sumAfter = 0;
    double weightAfter = 0;
    for (int i = stretch.whole().from(); i < stretch.whole().to(); i++) {
      Fact fact = stretch.facts().get(i);
      double weight = 1 / (fact.stated * fact.stated);
      if (!fact.isReading() && i < onsets.first()) {
        sumBefore += weight * fact.value;
        weightBefore += weight;
      } else if (!fact.isReading()) {
        sumAfter += weight * fact.value;
        weightAfter += weight;
      }
    }
    if (weightBefore == 0 || weightAfter == 0) {
      return false;
    }
    double change = sumAfter / weightAfter - sumBefore / weightBefore;
    double uncertainty = Math.sqrt(1 / weightAfter + 1 / weightBefore);
    return Math.signum(onsets.mean(Track.EFFECT)) * change > LEAST_SUPPORT * uncertainty;
  }
}

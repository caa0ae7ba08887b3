package org.limbspan.drift;

/** Rate and beginning of a steady drift. */
final class DriftEstimate {

  private static final double DAYS = 30;

  /** Wide enough to draw no drift towards 0: 2 percent in 30 days. */
  private static final double RATE_PER_DAY = 0.02 / DAYS;

  private DriftEstimate() {}

  static Estimated of(Stretch stretch) {
    Onsets onsets =
        new Onsets(
            stretch,
            (track, fact) ->
                track.startEffect(
                    Regressor.slopeFrom(fact.day - fact.gapDays / 2), Priors.square(RATE_PER_DAY)));
    double last = stretch.last().day;
    double rate = 100 * DAYS * onsets.mean(Track.EFFECT);
    double uncertainty = 100 * DAYS * onsets.uncertainty(Track.EFFECT);
    double days = last - Fact.daysOf(onsets.at());
    Figures.Drift figures =
        new Figures.Drift(rate, uncertainty, rate * days / DAYS, uncertainty * days / DAYS);
    return Estimated.of(onsets, rate, uncertainty, figures);
  }
}

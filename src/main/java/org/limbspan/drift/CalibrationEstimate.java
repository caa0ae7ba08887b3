package org.limbspan.drift;

import java.util.Optional;

/** By how much one calibration, or all of them, disagree with the rest. */
final class CalibrationEstimate {

  private static final double DEVIATION = 0.5;

  private CalibrationEstimate() {}

  /** Of the calibration at {@code index}, against the other ones and the readings. */
  static Estimated ofOne(Stretch stretch, int index) {
    Fact wrong = stretch.facts().get(index);
    Track track = stretch.start();
    track.startEffect(fact -> fact == wrong ? 1 : 0, Priors.square(DEVIATION));
    stretch.follow(track, stretch.whole().from());
    double deviation = -100 * track.mean(Track.EFFECT);
    double uncertainty = 100 * Math.sqrt(track.variance(Track.EFFECT));
    Figures.Calibration figures =
        new Figures.Calibration(Optional.of(wrong.at), deviation, uncertainty);
    return Estimated.at(index, wrong.at, deviation, uncertainty, figures);
  }

  /** Of all calibrations, against the Moon. */
  static Estimated ofAll(Stretch stretch) {
    Track track = stretch.start();
    track.addVariance(Track.TARGET, Priors.square(DEVIATION));
    stretch.follow(track, stretch.whole().from());
    Fact first = stretch.facts().get(0);
    double deviation = -100 * track.mean(Track.TARGET);
    double uncertainty = 100 * Math.sqrt(track.variance(Track.TARGET));
    Figures.Calibration figures = new Figures.Calibration(Optional.empty(), deviation, uncertainty);
    return Estimated.at(0, first.at, deviation, uncertainty, figures);
  }
}

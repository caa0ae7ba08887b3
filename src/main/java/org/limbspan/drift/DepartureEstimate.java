package org.limbspan.drift;

import org.hipparchus.stat.regression.SimpleRegression;

/** How the observed sizes go with the predicted ones, from the beginning of the setup. */
final class DepartureEstimate {

  private DepartureEstimate() {}

  static Estimated ofSlope(Stretch stretch, Regressor regressor) {
    Track track = stretch.start();
    track.startEffect(regressor, 1);
    stretch.follow(track, stretch.whole().from());
    double departure = track.mean(Track.EFFECT);
    double uncertainty = Math.sqrt(track.variance(Track.EFFECT));
    return estimated(stretch, departure, uncertainty);
  }

  /** The slope on the parallax, which in the near-Moon world tells little more than its sign. */
  static Estimated ofNearMoon(Stretch stretch) {
    SimpleRegression regression = new SimpleRegression();
    for (Fact fact : stretch.readingsFrom(0)) {
      regression.addData(fact.parallax, fact.value);
    }
    return estimated(stretch, regression.getSlope(), regression.getSlopeStdErr());
  }

  private static Estimated estimated(Stretch stretch, double departure, double uncertainty) {
    return Estimated.at(
        0,
        stretch.facts().get(0).at,
        100 * departure,
        100 * uncertainty,
        new Figures.Departure(1 + departure, uncertainty));
  }
}

package org.limbspan.drift;

import java.util.Optional;
import org.limbspan.cycle.Observation;
import org.limbspan.sky.Axis;

/** How far the residuals go with the flattening of the disc by refraction. */
final class AltitudeEstimate {

  /**
   * Flattening at 10 degrees, in percent: the slope of Saemundsson's refraction between 9.75 and
   * 10.25 degrees, R = 1.02' / tan(h + 10.3 / (h + 5.11)); Meeus, Astronomical Algorithms, 2nd ed.,
   * chapter 16.
   */
  private static final double AT_TEN_DEGREES_PERCENT = -0.83;

  private static final double SHARE = 3;

  /** Relative uncertainty of the flattening itself: the air of the season is not known better. */
  private static final double AIR = 0.05;

  private AltitudeEstimate() {}

  static Estimated ofAxis(Stretch stretch, AxisLens lens) {
    Onsets onsets =
        new Onsets(
            stretch,
            (track, fact) -> {
              double day = fact.day;
              track.startEffect(
                  each -> each.day >= day ? lens.offset(each) : 0, Priors.square(SHARE));
            });
    double unit = perFlattening(lens);
    double share = unit * onsets.mean(Track.EFFECT);
    double uncertainty = Math.hypot(unit * onsets.uncertainty(Track.EFFECT), AIR * share);
    Figures.Altitude figures =
        new Figures.Altitude(lens.logged(), Optional.of(lens.measured()), share, uncertainty);
    return Estimated.of(
        onsets,
        AT_TEN_DEGREES_PERCENT * share,
        Math.abs(AT_TEN_DEGREES_PERCENT) * uncertainty,
        figures);
  }

  static Estimated ofRefraction(Stretch stretch) {
    Track track = stretch.start();
    track.startEffect(Regressor.FLATTENING, Priors.square(SHARE));
    stretch.follow(track, stretch.whole().from());
    Fact first = stretch.facts().get(0);
    Axis logged = stretch.readingsFrom(0).get(0).observation.map(Observation::axis).orElseThrow();
    double share = track.mean(Track.EFFECT);
    double uncertainty = Math.hypot(Math.sqrt(track.variance(Track.EFFECT)), AIR * share);
    Figures.Altitude figures = new Figures.Altitude(logged, Optional.empty(), share, uncertainty);
    return Estimated.at(
        0,
        first.at,
        AT_TEN_DEGREES_PERCENT * share,
        Math.abs(AT_TEN_DEGREES_PERCENT) * uncertainty,
        figures);
  }

  /** Offset of the lens in units of ln(vertical / horizontal). */
  private static double perFlattening(AxisLens lens) {
    return share(lens.measured()) - share(lens.logged());
  }

  private static double share(Axis axis) {
    return switch (axis) {
      case HORIZONTAL -> 0;
      case VERTICAL -> 1;
      case LIMB_FIT -> 0.5;
    };
  }
}

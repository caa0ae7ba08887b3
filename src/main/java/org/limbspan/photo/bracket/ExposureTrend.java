package org.limbspan.photo.bracket;

import java.util.List;
import java.util.Optional;

/**
 * How the measured size goes with the exposure: light that spills over a burnt-out limb makes the
 * disc grow with every stop.
 *
 * <p>The slope of a weighted straight line through ln(diameter) over the exposure in stops, and its
 * standard uncertainty from the frames' own uncertainties. It takes three frames that span a stop.
 *
 * @param percentPerStop growth of the diameter when the exposure is doubled
 * @param uncertaintyPercentPerStop above 0
 */
public record ExposureTrend(double percentPerStop, double uncertaintyPercentPerStop) {

  private static final int FEWEST = 3;
  private static final double LEAST_SPAN_STOPS = 1;
  private static final double SIGNIFICANT = 3;

  /** Whether the growth is more than chance, at three standard uncertainties. */
  public boolean isSignificant() {
    return Math.abs(percentPerStop) > SIGNIFICANT * uncertaintyPercentPerStop;
  }

  /** Empty for too few frames with a told exposure, or exposures too much alike. */
  static Optional<ExposureTrend> of(List<Frame> frames) {
    List<Frame> told = frames.stream().filter(frame -> stops(frame) > -1e9).toList();
    double least = told.stream().mapToDouble(ExposureTrend::stops).min().orElse(0);
    double most = told.stream().mapToDouble(ExposureTrend::stops).max().orElse(0);
    if (told.size() < FEWEST || most - least < LEAST_SPAN_STOPS) {
      return Optional.empty();
    }
    double weights = 0;
    double meanStops = 0;
    double meanLog = 0;
    for (Frame frame : told) {
      weights += weight(frame);
      meanStops += weight(frame) * stops(frame);
      meanLog += weight(frame) * Math.log(frame.diameterPx());
    }
    meanStops /= weights;
    meanLog /= weights;
    double squares = 0;
    double products = 0;
    for (Frame frame : told) {
      double stops = stops(frame) - meanStops;
      squares += weight(frame) * stops * stops;
      products += weight(frame) * stops * (Math.log(frame.diameterPx()) - meanLog);
    }
    return Optional.of(new ExposureTrend(100 * products / squares, 100 / Math.sqrt(squares)));
  }

  private static double stops(Frame frame) {
    Double stops = frame.exposureStops();
    return stops == null ? Double.NEGATIVE_INFINITY : stops;
  }

  private static double weight(Frame frame) {
    double relative = frame.ownUncertaintyPx() / frame.diameterPx();
    return 1 / (relative * relative);
  }
}

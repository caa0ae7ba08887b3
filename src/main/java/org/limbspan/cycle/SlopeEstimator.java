package org.limbspan.cycle;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import org.limbspan.sky.Site;

/**
 * Regression of ln(observed) on ln(predicted) diameter over all readings, with a free level for
 * each setup: the result knows nothing of plate scales.
 *
 * <p>Robust generalised least squares ({@link RobustRegression}): noise factor, night part and
 * outliers come from the same readings. Where the standard uncertainty is above 0.2, the readings
 * may depart but never agree. Readings of fewer than {@link #FEWEST_PASSES} passes, or of a Moon
 * that was not {@link #LEAST_CHANGE} nearer in one of them than in another, have no verdict: what
 * one night shows is the night ratio, and what it has in common would pass for swing.
 */
public final class SlopeEstimator {

  /** Three of these still fit between the predicted slope and a swing of less than half of it. */
  static final double MOST_UNCERTAINTY = 0.2;

  /** Two passes leave nothing to tell the part common to a night from. */
  static final int FEWEST_PASSES = 3;

  /** Logarithm of the diameter: more than any one pass changes, a quarter of a full swing. */
  static final double LEAST_CHANGE = 0.03;

  private SlopeEstimator() {}

  /** The slope over {@code observations} of one rig, in any order. */
  public static SwingSlope estimate(List<Observation> observations, Site site) {
    return estimate(Series.of(observations, site));
  }

  /** The slope over a series. */
  public static SwingSlope estimate(Series series) {
    Optional<RobustRegression.Fit> fit = series.slope();
    return new SwingSlope(
        fit.map(f -> f.coefficient(0)),
        fit.filter(f -> showsSwing(series))
            .map(f -> verdict(f.coefficient(0)))
            .orElse(Verdict.TOO_FEW),
        series.size(),
        fit.map(RobustRegression.Fit::noise));
  }

  /** Along the horizon: refraction, which flattens a low Moon, is no swing. */
  private static boolean showsSwing(Series series) {
    DoubleSummaryStatistics size =
        series.observations().stream()
            .mapToDouble(o -> Math.log(o.sight().horizontalDiameterArcmin()))
            .summaryStatistics();
    return series.passCount() >= FEWEST_PASSES && size.getMax() - size.getMin() >= LEAST_CHANGE;
  }

  static Optional<RobustRegression.Fit> regression(Series series) {
    Series past = series.past();
    Optional<KnownRegression> known =
        series
            .memory()
            .slope
            .of(
                past.observations(),
                () -> KnownRegression.of(rows(past), NightPart.RANDOM, new double[] {1}));
    return series.hasRest()
        ? known.flatMap(k -> k.with(rows(series.rest()))).map(KnownRegression.Grown::fit)
        : known.map(KnownRegression::fit);
  }

  static Rows rows(Series series) {
    return Rows.of(
        series.lnObserved(),
        new double[][] {series.lnPredicted()},
        series.stated(),
        series.nights(),
        series.setups());
  }

  static Verdict verdict(Estimate slope) {
    return Verdict.of(slope, 1, MOST_UNCERTAINTY);
  }
}

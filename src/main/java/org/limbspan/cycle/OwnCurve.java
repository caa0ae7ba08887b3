package org.limbspan.cycle;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.hipparchus.stat.descriptive.rank.Median;
import org.limbspan.sky.Site;

/**
 * The Moon's size in arcminutes as a rig's readings alone draw it: the curve of {@link
 * SelfReliantEstimator} at the level at which the readings lie.
 *
 * <p>Level: median over the readings of ln(observed) less the curve and less the gain by the
 * parallax that the same fit found. Of long series every second, third ... pass is fitted, so that
 * no more than about 1500 readings are.
 *
 * <p>Accuracy: as good as the calibration in its level, and in its shape some 0.1 percent where
 * readings cover the month; beyond the first and the last reading it is no more than a guess.
 */
public final class OwnCurve {

  private static final int FITTED = 1500;

  private final SelfReliantCycle cycle;
  private final double level;
  private final int fittedCount;

  private OwnCurve(SelfReliantCycle cycle, double level, int fittedCount) {
    this.cycle = cycle;
    this.level = level;
    this.fittedCount = fittedCount;
  }

  /**
   * The curve of the readings of one rig, in any order.
   *
   * @return empty where {@link SelfReliantEstimator} finds none
   */
  public static Optional<OwnCurve> of(
      List<Observation> observations, Site site, AltitudeSource altitudes) {
    Series series = Series.of(observations, site).where(altitudes::isKnown).thinned(FITTED);
    return SelfReliantEstimator.estimate(series.observations(), site, altitudes)
        .map(cycle -> new OwnCurve(cycle, level(cycle, series, site, altitudes), series.size()));
  }

  private static double level(
      SelfReliantCycle cycle, Series series, Site site, AltitudeSource altitudes) {
    ParallaxLaw law = ParallaxLaw.of(series.observations(), site, altitudes);
    double parallax = cycle.distance().parallax().value();
    double[] left = series.lnUnrefracted();
    for (int i = 0; i < left.length; i++) {
      double lnSize = cycle.curve().lnSize(series.get(i).takenAt());
      left[i] -= lnSize + law.lnGain(i, parallax * Math.exp(lnSize));
    }
    return new Median().evaluate(left);
  }

  /** What the readings say of the Moon's months. */
  public SelfReliantCycle cycle() {
    return cycle;
  }

  /** Days from the nearest of the mean perigees that the readings draw; negative before it. */
  public double daysFromPerigee(Instant at) {
    SizeCurve curve = cycle.curve();
    return Math.IEEEremainder(curve.days(at) - curve.crestDays(), curve.periodDays());
  }

  /** How many readings were fitted. */
  public int fittedCount() {
    return fittedCount;
  }

  /**
   * Diameter without refraction of a Moon at that altitude, in arcminutes, the observer on a sphere
   * of the Earth's equatorial radius (0.3 percent of the gain by parallax, 0.005 of the size).
   *
   * @param altitudeDeg -90 to 90, without refraction
   */
  public double diameterArcmin(Instant at, double altitudeDeg) {
    double lnSize = cycle.curve().lnSize(at);
    double parallax = cycle.distance().parallax().value() * Math.exp(lnSize);
    double altitude = Math.toRadians(altitudeDeg);
    double across = parallax * Math.cos(altitude);
    double nearness = Math.sqrt(1 - across * across) - parallax * Math.sin(altitude);
    return Math.exp(level + lnSize) / nearness;
  }
}

package org.limbspan.cycle;

import java.util.Locale;
import org.hipparchus.stat.descriptive.StreamingStatistics;

/** Prints what readings of the kind and number that others published carry: 200 experimenters. */
public final class PublishedBench {

  private static final int EXPERIMENTERS = 200;

  private PublishedBench() {}

  public static void main(String[] arguments) {
    StreamingStatistics sinusoid = new StreamingStatistics();
    StreamingStatistics eccentricity = new StreamingStatistics();
    StreamingStatistics eccentricityStated = new StreamingStatistics();
    StreamingStatistics period = new StreamingStatistics();
    StreamingStatistics periodStated = new StreamingStatistics();
    StreamingStatistics apsidal = new StreamingStatistics();
    StreamingStatistics distance = new StreamingStatistics();
    StreamingStatistics distanceStated = new StreamingStatistics();
    for (long seed = 1; seed <= EXPERIMENTERS; seed++) {
      PublishedExperiments experiments = new PublishedExperiments(seed);
      var sizes = experiments.nakedEye();
      sinusoid.addValue(PublishedExperiments.oneSinusoid(sizes));
      SelfReliantEstimator.estimate(sizes, PublishedExperiments.TEXAS, AltitudeSource.COMPUTED)
          .ifPresent(
              cycle -> {
                eccentricity.addValue(cycle.eccentricity().value());
                eccentricityStated.addValue(cycle.eccentricity().uncertainty());
                period.addValue(cycle.periodDays().value());
                periodStated.addValue(cycle.periodDays().uncertainty());
                apsidal.addValue(cycle.apsidalEccentricity().value());
              });
      var photographs = experiments.oneNight();
      double computed = 6378.137 / photographs.get(0).sight().geocentricDistanceKm();
      NightDistanceEstimator.estimate(
              photographs,
              PublishedExperiments.ANTIOQUIA,
              AltitudeSource.COMPUTED,
              MonthPart.COMPUTED)
          .ifPresent(
              found -> {
                distance.addValue(found.parallax().value() / computed);
                distanceStated.addValue(found.parallax().uncertainty() / computed);
              });
    }
    print("eccentricity, one sinusoid", sinusoid, Double.NaN);
    print("eccentricity, ours", eccentricity, eccentricityStated.getMean());
    print("(D-d)/(D+d), ours", apsidal, Double.NaN);
    print("period, d", period, periodStated.getMean());
    print("one night: parallax over computed", distance, distanceStated.getMean());
  }

  private static void print(String what, StreamingStatistics values, double stated) {
    System.out.printf(
        Locale.ROOT,
        "%-36s n %3d mean %.4f scatter %.4f stated %.4f%n",
        what,
        values.getN(),
        values.getMean(),
        values.getStandardDeviation(),
        stated);
  }
}

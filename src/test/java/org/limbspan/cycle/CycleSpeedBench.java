package org.limbspan.cycle;

import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.List;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

/**
 * Processor time of each estimate on one thread as the readings grow to some 15,000 over ten years,
 * one simulated rig with all clear passes used; the second round is the one to quote.
 */
final class CycleSpeedBench {

  private static final double[] YEARS = {0.5, 1, 3, 10};

  private CycleSpeedBench() {}

  public static void main(String[] arguments) {
    for (int round = 1; round <= 2; round++) {
      System.out.printf("round %d, milliseconds%n", round);
      System.out.println(
          "readings    slope   nights   months    alone hypotheses diameter  distance");
      for (double years : YEARS) {
        measure(new RigSimulator(5), years);
      }
    }
  }

  private static void measure(RigSimulator rig, double years) {
    Site site = rig.site();
    List<Observation> readings =
        rig.readings(years, 12, 1, sight -> sight.diameterArcmin(Axis.HORIZONTAL));
    List<Apsis> apsides =
        SkyFixture.sky()
            .apsides(
                rig.start().minus(Duration.ofDays(40)),
                rig.start().plus(Duration.ofDays(40 + Math.round(366 * years))));
    System.out.printf(
        "%8d %8.0f %8.0f %8.0f %8.0f %10.0f %8.0f %9.0f%n",
        readings.size(),
        milliseconds(() -> SlopeEstimator.estimate(readings, site)),
        milliseconds(() -> NightRatioEstimator.estimate(readings, site)),
        milliseconds(() -> MonthEstimator.estimate(readings, site, apsides)),
        milliseconds(() -> SelfReliantEstimator.estimate(readings, site, AltitudeSource.COMPUTED)),
        milliseconds(() -> HypothesisEstimator.compare(readings, site, NearMoonAssumptions.USUAL)),
        milliseconds(
            () ->
                MoonDiameterEstimator.estimate(
                    readings, site, List.of(new SetupScale(0, 0.001)), 0.001)),
        milliseconds(
            () ->
                NightDistanceEstimator.estimate(
                    readings, site, AltitudeSource.COMPUTED, MonthPart.COMPUTED)));
  }

  private static double milliseconds(Runnable estimate) {
    long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    estimate.run();
    return (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before) / 1e6;
  }
}

package org.limbspan.cycle;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.hipparchus.stat.descriptive.DescriptiveStatistics;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

/**
 * How well the estimates and their stated uncertainties hold over simulated rig-years.
 *
 * <p>Arguments: number of rigs (300), years of each (1), first seed (1).
 */
final class CycleBench {

  /** Mean anomalistic month, days (Meeus, Astronomical Algorithms, rate of M', from memory). */
  private static final double PERIOD_DAYS = 27.55455;

  /** Amplitude of the anomalistic line of ln(1/distance), fit to DE405, 1980 to 2060. */
  private static final double ECCENTRICITY = 0.05442;

  /** Mean in the logarithm, of DE405, over 55 years. */
  private static final double MEAN_DISTANCE_KM = meanDistanceKm();

  /** Errors, plain and over their stated uncertainty. */
  private record Errors(DescriptiveStatistics plain, DescriptiveStatistics normalised) {}

  private final Map<String, Errors> errors = new LinkedHashMap<>();
  private int readings;
  private int departures;
  private int months;

  private CycleBench() {}

  public static void main(String[] arguments) {
    int rigs = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 300;
    double years = arguments.length > 1 ? Double.parseDouble(arguments[1]) : 1;
    long seed = arguments.length > 2 ? Long.parseLong(arguments[2]) : 1;
    CycleBench bench = new CycleBench();
    for (int k = 0; k < rigs; k++) {
      bench.judge(new RigSimulator(seed + k), years);
      bench.oneNight(new RigSimulator(seed + k));
    }
    bench.print(rigs);
  }

  private void judge(RigSimulator rig, double years) {
    List<Observation> observations = rig.pairs(years);
    Site site = rig.site();
    readings += observations.size();
    SwingSlope slope = SlopeEstimator.estimate(observations, site);
    add("slope of observed on predicted", slope.slope().orElseThrow(), 1);
    NightRatios nights = NightRatioEstimator.estimate(observations, site);
    nights.slope().ifPresent(s -> add("night ratio (logarithms)", s, 1));
    List<Apsis> apsides =
        SkyFixture.sky()
            .apsides(
                rig.start().minus(Duration.ofDays(40)),
                rig.start().plus(Duration.ofDays(40 + Math.round(366 * years))));
    for (MonthSwing month : MonthEstimator.estimate(observations, site, apsides)) {
      if (month.verdict() != Verdict.TOO_FEW) {
        months++;
        departures += month.verdict() == Verdict.DEPARTS ? 1 : 0;
        add(
            "swing of one month, percent",
            month.observedSwingPercent().orElseThrow(),
            month.predictedSwingPercent());
      }
    }
    SelfReliantCycle cycle =
        SelfReliantEstimator.estimate(observations, site, AltitudeSource.COMPUTED).orElseThrow();
    add("period, days (alone)", cycle.periodDays(), PERIOD_DAYS);
    add("eccentricity (alone)", cycle.eccentricity(), ECCENTRICITY);
    swing(cycle, observations, apsides);
    double parallax = ParallaxLaw.EQUATORIAL_RADIUS_KM / MEAN_DISTANCE_KM;
    add("parallax, all readings (alone)", cycle.distance().parallax(), parallax);
    NightDistanceEstimator.estimate(observations, site, AltitudeSource.COMPUTED, cycle.curve())
        .ifPresent(d -> add("parallax, nights (alone)", d.parallax(), parallax));
    NightDistanceEstimator.estimate(observations, site, AltitudeSource.COMPUTED, MonthPart.COMPUTED)
        .ifPresent(
            d -> add("parallax, nights (computed)", d.parallax(), meanParallax(observations)));
  }

  /** All that one clear night can give: a reading every 40 minutes. */
  private void oneNight(RigSimulator rig) {
    List<Observation> month =
        rig.readings(0.12, 15, 1, sight -> sight.diameterArcmin(Axis.HORIZONTAL));
    Map<Long, List<Observation>> nights =
        month.stream()
            .collect(
                Collectors.groupingBy(
                    o -> PassNumber.of(o.sight(), rig.site()), TreeMap::new, Collectors.toList()));
    nights.values().stream()
        .filter(night -> night.size() >= 9)
        .findFirst()
        .ifPresent(
            night ->
                NightDistanceEstimator.estimate(
                        night, rig.site(), AltitudeSource.COMPUTED, MonthPart.COMPUTED)
                    .ifPresent(d -> add("parallax, one night", d.parallax(), meanParallax(night))));
  }

  private void swing(SelfReliantCycle cycle, List<Observation> observations, List<Apsis> apsides) {
    Instant first = observations.get(0).takenAt();
    Instant last = observations.get(observations.size() - 1).takenAt();
    double[] swings =
        IntStream.range(0, apsides.size() - 2)
            .filter(i -> apsides.get(i).kind() == Apsis.Kind.PERIGEE)
            .filter(i -> apsides.get(i + 2).at().isAfter(first))
            .filter(i -> apsides.get(i).at().isBefore(last))
            .mapToDouble(
                i -> Math.log(apsides.get(i + 1).distanceKm() / apsides.get(i).distanceKm()))
            .toArray();
    if (swings.length == cycle.monthCount()) {
      double mean = new DescriptiveStatistics(swings).getMean();
      add("mean swing, percent (alone)", cycle.swingPercent(), 100 * Math.expm1(mean));
    }
  }

  private static double meanDistanceKm() {
    Instant start = Instant.parse("1985-01-01T00:00:00Z");
    return Math.exp(
        IntStream.range(0, 20_000)
            .mapToDouble(
                day ->
                    Math.log(
                        SkyFixture.sky().geocentricDistanceKm(start.plus(Duration.ofDays(day)))))
            .average()
            .orElseThrow());
  }

  private static double meanParallax(List<Observation> observations) {
    return ParallaxLaw.EQUATORIAL_RADIUS_KM
        / Math.exp(
            observations.stream()
                .mapToDouble(o -> Math.log(o.sight().geocentricDistanceKm()))
                .average()
                .orElseThrow());
  }

  private void add(String name, Estimate estimate, double truth) {
    Errors own =
        errors.computeIfAbsent(
            name, n -> new Errors(new DescriptiveStatistics(), new DescriptiveStatistics()));
    own.plain().addValue(estimate.value() - truth);
    own.normalised().addValue(estimate.sigmasFrom(truth));
  }

  private void print(int rigs) {
    System.out.printf(
        "%d rigs, %.1f readings each; %d months judged, %d depart%n%n",
        rigs, readings / (double) rigs, months, departures);
    System.out.printf(
        "%-34s %7s %12s %12s %12s %14s%n",
        "estimate", "number", "mean error", "rms error", "median |e|", "normalised rms");
    errors.forEach(
        (name, e) ->
            System.out.printf(
                "%-34s %7d %12.6f %12.6f %12.6f %14.3f%n",
                name,
                e.plain().getN(),
                e.plain().getMean(),
                e.plain().getQuadraticMean(),
                median(e.plain()),
                e.normalised().getQuadraticMean()));
  }

  private static double median(DescriptiveStatistics values) {
    DescriptiveStatistics sizes = new DescriptiveStatistics();
    for (double value : values.getValues()) {
      sizes.addValue(Math.abs(value));
    }
    return sizes.getPercentile(50);
  }
}

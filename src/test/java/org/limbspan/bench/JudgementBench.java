package org.limbspan.bench;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.limbspan.cycle.AltitudeSource;
import org.limbspan.cycle.HypothesisEstimator;
import org.limbspan.cycle.MonthEstimator;
import org.limbspan.cycle.NearMoonAssumptions;
import org.limbspan.cycle.NightRatioEstimator;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.RunningSelfReliantEstimator;
import org.limbspan.cycle.SelfReliantEstimator;
import org.limbspan.cycle.Sighted;
import org.limbspan.cycle.SlopeEstimator;
import org.limbspan.drift.Judge;
import org.limbspan.drift.RigHistory;
import org.limbspan.drift.RunningJudge;
import org.limbspan.drift.SetupHistory;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.limbspan.sky.SkyFixture;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.CommandLineOptionException;
import org.openjdk.jmh.runner.options.CommandLineOptions;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * How long the judgement of an invented rig takes as its readings grow, part by part, and once more
 * after one more reading. Prints a table in milliseconds, the mean of what JMH measured. Arguments:
 * JMH's own, such as {@code -p readings=1000,15000}.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class JudgementBench {

  static final Site SITE = new Site(40.1, -3.2, 600);
  private static final ZoneId ZONE = ZoneId.of("Europe/Madrid");
  private static final Instant FIRST = Instant.parse("2015-01-03T00:00:00Z");

  private static final List<String> COLUMNS =
      List.of(
          "judge",
          "judgeOneMore",
          "slope",
          "months",
          "nights",
          "alone",
          "aloneOneMore",
          "hypotheses");

  /** How many there are. */
  @Param({"1000", "2000", "4000", "8000", "15000"})
  public int readings = 1000;

  private final Sky sky = SkyFixture.sky();
  private List<Observation> some = List.of();
  private List<Observation> grown = List.of();
  private List<Apsis> apsides = List.of();

  public static void main(String[] args) throws RunnerException, CommandLineOptionException {
    Options options =
        new OptionsBuilder()
            .parent(new CommandLineOptions(args))
            .include("^" + JudgementBench.class.getName() + "\\.")
            .build();
    print(new Runner(options).run());
  }

  private static void print(Collection<RunResult> results) {
    Map<Integer, Map<String, Double>> rows = new TreeMap<>();
    for (RunResult result : results) {
      rows.computeIfAbsent(
              Integer.valueOf(result.getParams().getParam("readings")), count -> new HashMap<>())
          .put(result.getPrimaryResult().getLabel(), result.getPrimaryResult().getScore());
    }
    System.out.printf("%n%8s", "readings");
    COLUMNS.forEach(column -> System.out.printf(" %12s", column));
    rows.forEach(
        (count, row) -> {
          System.out.printf("%n%8d", count);
          COLUMNS.forEach(
              column ->
                  System.out.printf(Locale.ROOT, " %12.1f", row.getOrDefault(column, Double.NaN)));
        });
    System.out.println();
  }

  @Setup
  public void prepare() {
    grown = observations(sky, readings + 1);
    some = grown.subList(0, readings);
    apsides =
        sky.apsides(
            FIRST.minus(Duration.ofDays(29)),
            some.get(readings - 1).takenAt().plus(Duration.ofDays(29)));
  }

  @Benchmark
  public Object judge() {
    return new Judge(sky).judge(history(some));
  }

  /** Once, since the reading is no longer one more at the second time. */
  @Benchmark
  @BenchmarkMode(Mode.SingleShotTime)
  @Warmup(iterations = 5)
  @Measurement(iterations = 10)
  public Object judgeOneMore(Judged before) {
    return before.running.judge(history(grown));
  }

  @Benchmark
  public Object slope() {
    return SlopeEstimator.estimate(some, SITE);
  }

  @Benchmark
  public Object months() {
    return MonthEstimator.estimate(some, SITE, apsides);
  }

  @Benchmark
  public Object nights() {
    return NightRatioEstimator.estimate(some, SITE);
  }

  /** From the readings alone. */
  @Benchmark
  public Object alone() {
    return SelfReliantEstimator.estimate(some, SITE, AltitudeSource.COMPUTED);
  }

  @Benchmark
  @BenchmarkMode(Mode.SingleShotTime)
  @Warmup(iterations = 5)
  @Measurement(iterations = 10)
  public Object aloneOneMore(Estimated before) {
    return before.running.estimate(grown, SITE, AltitudeSource.COMPUTED);
  }

  /** All four forms. */
  @Benchmark
  public Object hypotheses() {
    return HypothesisEstimator.compare(some, SITE, NearMoonAssumptions.ALL);
  }

  /** What is remembered of a rig whose readings but one were judged. */
  @State(Scope.Benchmark)
  public static class Judged {

    private RunningJudge running = new RunningJudge(SkyFixture.sky());

    @Setup(Level.Invocation)
    public void judge(JudgementBench bench) {
      running = new RunningJudge(bench.sky);
      running.judge(history(bench.some));
    }
  }

  /** What is remembered of all readings but one, by themselves. */
  @State(Scope.Benchmark)
  public static class Estimated {

    private RunningSelfReliantEstimator running = new RunningSelfReliantEstimator();

    @Setup(Level.Invocation)
    public void estimate(JudgementBench bench) {
      running = new RunningSelfReliantEstimator();
      running.estimate(bench.some, SITE, AltitudeSource.COMPUTED);
    }
  }

  private static RigHistory history(List<Observation> observations) {
    return new RigHistory(
        SITE,
        ZONE,
        List.of(new SetupHistory(0, Optional.empty(), Optional.empty(), List.of(), observations)));
  }

  static List<Observation> observations(Sky sky, int count) {
    SplittableRandom random = new SplittableRandom(15);
    List<Observation> observations = new ArrayList<>();
    for (Instant at = FIRST; observations.size() < count; at = at.plus(Duration.ofHours(2))) {
      MoonSight sight = sky.moonAt(at, SITE);
      if (sight.altitudeDeg() > 10 && random.nextDouble() < 0.86) {
        double diameter = sight.horizontalDiameterArcmin();
        observations.add(
            new Observation(
                at,
                Axis.HORIZONTAL,
                diameter * Math.exp(0.0009 * random.nextGaussian()),
                0.001,
                sight,
                0,
                Sighted.NONE));
      }
    }
    return observations;
  }
}

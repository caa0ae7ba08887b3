package org.limbspan.bench;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.OrekitMoon;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.limbspan.sky.SkyFixture;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.orekit.time.AbsoluteDate;
import org.shredzone.commons.suncalc.MoonPosition;

/**
 * Predictions a second, at random and at sorted instants of ten years, beside two general-purpose
 * libraries in the same run: commons-suncalc (a short series; altitude, azimuth and distance from
 * the Earth's centre) and Orekit (the same ephemeris file; the place of the Moon only, without
 * site, air and Sun).
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class PredictionBench {

  private static final int COUNT = 20_000;
  private static final Site SITE = new Site(48.1, 11.6, 520);
  private static final Instant FROM = Instant.parse("2016-01-01T00:00:00Z");

  /** In which order instants are asked for. */
  @Param({"random", "sorted"})
  public String order = "random";

  private final Sky sky = SkyFixture.sky();
  private Instant[] instants = new Instant[0];
  private AbsoluteDate[] dates = new AbsoluteDate[0];
  private final OrekitMoon orekit = new OrekitMoon();
  private int next;

  public static void main(String[] args) throws RunnerException {
    new Runner(new OptionsBuilder().include(PredictionBench.class.getName()).build()).run();
  }

  @Setup
  public void prepare() {
    long span = Duration.ofDays(3652).toMillis();
    instants =
        new SplittableRandom(7)
            .longs(COUNT, 0, span)
            .mapToObj(FROM::plusMillis)
            .toArray(Instant[]::new);
    if (order.equals("sorted")) {
      Arrays.sort(instants);
    }
    dates = Arrays.stream(instants).map(orekit::date).toArray(AbsoluteDate[]::new);
  }

  /** The whole prediction: distance, size along both axes, altitude, azimuth, phase, Sun. */
  @Benchmark
  public MoonSight limbspan() {
    return sky.moonAt(instants[step()], SITE);
  }

  @Benchmark
  public MoonPosition suncalc() {
    return MoonPosition.compute()
        .on(instants[step()])
        .at(SITE.latitudeDeg(), SITE.longitudeDeg())
        .execute();
  }

  @Benchmark
  public Vector3D orekitPlaceOnly() {
    return orekit.fromEarthM(dates[step()]);
  }

  private int step() {
    next = (next + 1) % COUNT;
    return next;
  }
}

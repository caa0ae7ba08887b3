package org.limbspan.bench;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Supplier;
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

/**
 * How long the judgement of an invented rig takes as its readings grow, part by part, and once more
 * after one more reading. Prints a table in milliseconds; the best of three rounds.
 */
public final class JudgementBench {

  static final Site SITE = new Site(40.1, -3.2, 600);
  private static final ZoneId ZONE = ZoneId.of("Europe/Madrid");
  private static final Instant FIRST = Instant.parse("2015-01-03T00:00:00Z");
  private static final int ROUNDS = 3;

  private JudgementBench() {}

  public static void main(String[] args) {
    Sky sky = SkyFixture.sky();
    List<Observation> all = observations(sky, 15_001);
    System.out.printf(
        "%8s %8s %9s %8s %8s %8s %9s %9s %10s%n",
        "readings",
        "judge",
        "one more",
        "slope",
        "months",
        "nights",
        "alone",
        "one more",
        "hypotheses");
    for (int count : new int[] {1000, 2000, 4000, 8000, 15_000}) {
      List<Observation> some = all.subList(0, count);
      List<Apsis> apsides =
          sky.apsides(
              FIRST.minus(Duration.ofDays(29)),
              some.get(count - 1).takenAt().plus(Duration.ofDays(29)));
      System.out.printf(
          Locale.ROOT,
          "%8d %8.0f %9.0f %8.0f %8.0f %8.0f %9.0f %9.0f %10.0f%n",
          count,
          best(() -> new Judge(sky).judge(history(some))),
          oneMore(sky, some, all.get(count)),
          best(() -> SlopeEstimator.estimate(some, SITE)),
          best(() -> MonthEstimator.estimate(some, SITE, apsides)),
          best(() -> NightRatioEstimator.estimate(some, SITE)),
          best(() -> SelfReliantEstimator.estimate(some, SITE, AltitudeSource.COMPUTED)),
          aloneWithOneMore(some, all.get(count)),
          best(() -> HypothesisEstimator.compare(some, SITE, NearMoonAssumptions.ALL)));
    }
  }

  private static double oneMore(Sky sky, List<Observation> some, Observation next) {
    double best = Double.POSITIVE_INFINITY;
    for (int round = 0; round < ROUNDS; round++) {
      RunningJudge running = new RunningJudge(sky);
      running.judge(history(some));
      List<Observation> grown = new ArrayList<>(some);
      grown.add(next);
      best = Math.min(best, millis(() -> running.judge(history(grown))));
    }
    return best;
  }

  private static double aloneWithOneMore(List<Observation> some, Observation next) {
    double best = Double.POSITIVE_INFINITY;
    for (int round = 0; round < ROUNDS; round++) {
      RunningSelfReliantEstimator running = new RunningSelfReliantEstimator();
      running.estimate(some, SITE, AltitudeSource.COMPUTED);
      List<Observation> grown = new ArrayList<>(some);
      grown.add(next);
      best = Math.min(best, millis(() -> running.estimate(grown, SITE, AltitudeSource.COMPUTED)));
    }
    return best;
  }

  private static double best(Supplier<?> work) {
    double best = Double.POSITIVE_INFINITY;
    for (int round = 0; round < ROUNDS; round++) {
      best = Math.min(best, millis(work));
    }
    return best;
  }

  private static double millis(Supplier<?> work) {
    long start = System.nanoTime();
    if (work.get() == null) {
      throw new IllegalStateException("nothing came out");
    }
    return (System.nanoTime() - start) / 1e6;
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

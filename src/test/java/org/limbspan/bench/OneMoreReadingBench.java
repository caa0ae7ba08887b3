package org.limbspan.bench;

import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.limbspan.cycle.AltitudeSource;
import org.limbspan.cycle.CycleMemory;
import org.limbspan.cycle.HypothesisEstimator;
import org.limbspan.cycle.MonthEstimator;
import org.limbspan.cycle.NearMoonAssumptions;
import org.limbspan.cycle.NightDistanceEstimator;
import org.limbspan.cycle.NightRatioEstimator;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.RunningSelfReliantEstimator;
import org.limbspan.cycle.SelfReliantCycle;
import org.limbspan.cycle.Series;
import org.limbspan.cycle.SlopeEstimator;
import org.limbspan.drift.RigHistory;
import org.limbspan.drift.RunningJudge;
import org.limbspan.drift.SetupHistory;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.SkyFixture;

/**
 * What one more reading costs in an invented rig's judgement after one, two, five and ten years,
 * part by part: with all worked out anew (the median of three), and with what was remembered of the
 * reading before (the median of 129 readings one after the other, and the longest, which has a
 * milestone in it). Milliseconds.
 */
public final class OneMoreReadingBench {

  private static final int STEPS = 129;

  private OneMoreReadingBench() {}

  public static void main(String[] args) {
    List<Observation> all = JudgementBench.observations(SkyFixture.sky(), 15_000 + STEPS);
    List<Apsis> apsides =
        SkyFixture.sky()
            .apsides(
                all.get(0).takenAt().minus(Duration.ofDays(29)),
                all.get(all.size() - 1).takenAt().plus(Duration.ofDays(29)));
    for (int count : new int[] {1500, 1500, 3000, 7500, 15_000}) {
      Map<String, List<Double>> anew = new LinkedHashMap<>();
      for (int round = 0; round < 3; round++) {
        new Memory().judge(all.subList(0, count), apsides, anew);
      }
      Memory memory = new Memory();
      memory.judge(all.subList(0, count), apsides, new LinkedHashMap<>());
      Map<String, List<Double>> more = new LinkedHashMap<>();
      for (int step = 1; step <= STEPS; step++) {
        memory.judge(all.subList(0, count + step), apsides, more);
      }
      System.out.printf("%n%8d %10s %10s %10s%n", count, "anew", "one more", "longest");
      more.forEach(
          (part, millis) ->
              System.out.printf(
                  Locale.ROOT,
                  "%12s %6.1f %10.2f %10.1f%n",
                  part,
                  median(anew.get(part)),
                  median(millis),
                  millis.stream().mapToDouble(m -> m).max().orElseThrow()));
    }
  }

  private static double median(List<Double> values) {
    double[] sorted = values.stream().mapToDouble(v -> v).sorted().toArray();
    return Arrays.stream(sorted).skip(sorted.length / 2).findFirst().orElseThrow();
  }

  /** As the service keeps it of a rig. */
  private static final class Memory {

    private final RunningJudge changes = new RunningJudge(SkyFixture.sky());
    private final CycleMemory cycle = new CycleMemory();
    private final RunningSelfReliantEstimator alone = new RunningSelfReliantEstimator();

    void judge(List<Observation> readings, List<Apsis> apsides, Map<String, List<Double>> times) {
      double began = now();
      timed(times, "change", () -> changes.judge(history(readings)));
      Series series = timed(times, "series", () -> Series.of(readings, JudgementBench.SITE, cycle));
      timed(times, "slope", () -> SlopeEstimator.estimate(series));
      timed(times, "months", () -> MonthEstimator.estimate(series, apsides));
      timed(times, "nights", () -> NightRatioEstimator.estimate(series, JudgementBench.SITE));
      Optional<SelfReliantCycle> own =
          timed(
              times,
              "alone",
              () -> alone.estimate(series, JudgementBench.SITE, AltitudeSource.COMPUTED));
      timed(
          times,
          "distance",
          () ->
              NightDistanceEstimator.estimate(
                  series, JudgementBench.SITE, AltitudeSource.COMPUTED, own.orElseThrow().curve()));
      timed(
          times,
          "hypotheses",
          () -> HypothesisEstimator.compare(series, JudgementBench.SITE, NearMoonAssumptions.ALL));
      times.computeIfAbsent("all", p -> new ArrayList<>()).add(now() - began);
    }

    private static <T> T timed(Map<String, List<Double>> times, String part, Supplier<T> work) {
      double began = now();
      T result = work.get();
      times.computeIfAbsent(part, p -> new ArrayList<>()).add(now() - began);
      return result;
    }

    private static double now() {
      return System.nanoTime() / 1e6;
    }
  }

  private static RigHistory history(List<Observation> observations) {
    return new RigHistory(
        JudgementBench.SITE,
        ZoneId.of("Europe/Madrid"),
        List.of(new SetupHistory(0, Optional.empty(), Optional.empty(), List.of(), observations)));
  }
}

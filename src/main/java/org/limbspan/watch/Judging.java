package org.limbspan.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.limbspan.cycle.AltitudeSource;
import org.limbspan.cycle.MoonDistance;
import org.limbspan.cycle.NightDistanceEstimator;
import org.limbspan.cycle.NightRatioEstimator;
import org.limbspan.cycle.NightRatios;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.SelfReliantCycle;
import org.limbspan.cycle.Series;
import org.limbspan.drift.Finding;
import org.limbspan.reading.RecordedReading;
import org.limbspan.reading.StandardisedReading;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.Rig;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;

/** The judgement of one rig as a function of its ledger. */
@Component
class Judging {

  private static final Duration A_MONTH_AND_A_BIT = Duration.ofDays(29);

  private final Sky sky;
  private final RunningJudges judges;

  Judging(Sky sky) {
    this.sky = sky;
    this.judges = new RunningJudges(sky);
  }

  Result judge(
      InstrumentHistory history,
      List<StandardisedReading> readings,
      List<RecordedReading> unscaled) {
    Rig rig = history.rig();
    List<UnscaledReading> beside = unscaled.stream().map(each -> sighted(history, each)).toList();
    RunningJudges.Running running = judges.of(rig.id());
    synchronized (running) {
      RigEvidence evidence = RigEvidence.of(history, readings, beside, running.observations());
      return judge(rig, evidence, running);
    }
  }

  private Result judge(Rig rig, RigEvidence evidence, RunningJudges.Running running) {
    List<Finding> findings = running.changes().judge(evidence.rigHistory());
    AsJudged asJudged = AsJudged.of(evidence, findings, rig.timeZone());
    List<Observation> observations = running.asJudged().same(asJudged.observations());
    Series series = Series.of(observations, rig.site(), running.cycle());
    CompletableFuture<HypothesesResult> hypotheses =
        CompletableFuture.supplyAsync(() -> HypothesesSummary.of(series, rig.site()));
    CompletableFuture<CycleSummary> cycle =
        CompletableFuture.supplyAsync(
            () -> new CycleSummary(evidence, asJudged, series, apsidesAround(observations)));
    Optional<SelfReliantCycle> selfReliant =
        running.selfReliant().estimate(series, rig.site(), AltitudeSource.COMPUTED);
    NightRatios ratios = NightRatioEstimator.estimate(series, rig.site());
    Optional<MoonDistance> distance =
        selfReliant.flatMap(
            alone ->
                NightDistanceEstimator.estimate(
                    series, rig.site(), AltitudeSource.COMPUTED, alone.curve()));
    NightsResult nights =
        new NightSummary(running.culminations(), running.nights(), rig.site())
            .nights(ratios, distance);
    OwnSummary own = new OwnSummary(series, rig.site(), running.sighted());
    return new Result(
        findings,
        new JudgementDocument(
            cycle.join().cycle(selfReliant),
            nights,
            hypotheses.join(),
            own.result(selfReliant, ratios, distance)));
  }

  private UnscaledReading sighted(InstrumentHistory history, RecordedReading reading) {
    return new UnscaledReading(
        reading,
        history.setupAt(reading.takenAt()).number(),
        sky.moonAt(reading.takenAt(), history.rig().site()));
  }

  private List<Apsis> apsidesAround(List<Observation> observations) {
    if (observations.isEmpty()) {
      return List.of();
    }
    Instant first =
        observations.stream().map(Observation::takenAt).min(Instant::compareTo).orElseThrow();
    Instant last =
        observations.stream().map(Observation::takenAt).max(Instant::compareTo).orElseThrow();
    return sky.apsides(
        latest(first.minus(A_MONTH_AND_A_BIT), sky.ephemerisFrom()),
        earliest(last.plus(A_MONTH_AND_A_BIT), sky.ephemerisTo()));
  }

  private static Instant latest(Instant one, Instant other) {
    return one.isAfter(other) ? one : other;
  }

  private static Instant earliest(Instant one, Instant other) {
    return one.isBefore(other) ? one : other;
  }

  /** Findings for the alerts, and everything else for the pages. */
  record Result(List<Finding> findings, JudgementDocument document) {}
}

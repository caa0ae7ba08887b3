package org.limbspan.drift;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Turns the changes that a scan found into findings, with estimates from all facts. */
final class Report {

  private final int setup;
  private final Scan scan;
  private final NoisePrior noise;
  private final List<Fact> facts;
  private final List<Finding> findings = new ArrayList<>();

  Report(int setup, Scan scan, NoisePrior noise) {
    this.setup = setup;
    this.scan = scan;
    this.noise = noise;
    this.facts = scan.facts();
  }

  List<Finding> findings() {
    List<Confirmed> confirmed = scan.confirmed();
    Track start = Track.start(noise, 1, Priors.square(Priors.TARGET));
    int from = 0;
    for (int i = 0; i < confirmed.size(); i++) {
      Confirmed change = confirmed.get(i);
      boolean last = i + 1 == confirmed.size();
      int to = last ? facts.size() : confirmed.get(i + 1).onset();
      Verdict verdict = Verdict.of(change.notesBefore(to));
      Track best = change.best(verdict.kind());
      int onset = best.hypothesis.onset();
      Range between = new Range(from, Math.max(to, onset + 1));
      Stretch stretch = Stretch.around(onset, between, facts, start, scan.nightShare());
      findings.add(finding(change, verdict, estimate(best, stretch)));
      from = onset;
      start = Track.start(noise, 1, Priors.square(Priors.TARGET));
      start.regard(best.lens());
    }
    return findings;
  }

  private static Estimated estimate(Track best, Stretch stretch) {
    return switch (best.hypothesis.change()) {
      case STEP -> StepEstimate.of(stretch);
      case DRIFT -> DriftEstimate.of(stretch);
      case SCATTER -> ScatterEstimate.of(stretch);
      case CALIBRATION -> CalibrationEstimate.ofOne(stretch, best.hypothesis.onset());
      case TARGET -> CalibrationEstimate.ofAll(stretch, best);
      case AXIS -> AltitudeEstimate.ofAxis(stretch, (AxisLens) best.lens());
      case FLATTENING -> AltitudeEstimate.ofRefraction(stretch, best);
      case CLOCK -> ClockEstimate.of(stretch, (ClockLens) best.lens());
      case SWING, RATIO -> DepartureEstimate.ofSlope(stretch, best);
      case NEAR_MOON -> DepartureEstimate.ofNearMoon(stretch);
      case NONE, DRIFT_END, SCATTER_END, CLOCK_END ->
          throw new IllegalStateException("no estimate of " + best.hypothesis);
    };
  }

  private Finding finding(Confirmed change, Verdict verdict, Estimated estimated) {
    List<Instant> evidence = new ArrayList<>();
    for (int i = estimated.first(); i <= change.evidence; i++) {
      if (facts.get(i).isReading()) {
        evidence.add(facts.get(i).at);
      }
    }
    return new Finding(
        verdict.kind(),
        setup,
        estimated.at(),
        estimated.from(),
        estimated.to(),
        Optional.empty(),
        facts.get(change.evidence).at,
        estimated.sizePercent(),
        estimated.uncertaintyPercent(),
        verdict.probability(),
        verdict.causes(),
        evidence,
        estimated.figures());
  }
}

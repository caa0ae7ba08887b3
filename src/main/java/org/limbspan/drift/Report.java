package org.limbspan.drift;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Turns the changes that a scan found into findings, with estimates from all facts. */
final class Report {

  private final int setup;
  private final Scan scan;
  private final List<Fact> facts;
  private final List<Finding> findings = new ArrayList<>();
  private Background background;
  private Carried carried;

  Report(int setup, Scan scan) {
    this.setup = setup;
    this.scan = scan;
    facts = scan.facts();
    background = scan.background();
    carried = scan.origin();
  }

  List<Finding> findings() {
    List<Confirmed> confirmed = scan.confirmed();
    int from = 0;
    for (int i = 0; i < confirmed.size(); i++) {
      Confirmed change = confirmed.get(i);
      boolean last = i + 1 == confirmed.size();
      int to = last ? facts.size() : confirmed.get(i + 1).onset();
      Verdict verdict = Verdict.of(change.notesBefore(to));
      Hypothesis hypothesis = verdict.hypothesis();
      Range between = new Range(from, Math.max(to, Math.max(from, hypothesis.onset()) + 1));
      Stretch stretch = background.stretch(hypothesis, between, facts, scan.nightShare());
      report(change, verdict, stretch);
      background = background.after(hypothesis);
      carried = carried.after(hypothesis);
      from = Math.max(from, hypothesis.onset());
    }
    return findings;
  }

  /** What the next setup may inherit; to be asked after the findings. */
  Carried carried() {
    return carried;
  }

  private void report(Confirmed change, Verdict verdict, Stretch stretch) {
    switch (verdict.hypothesis().change()) {
      case DRIFT_END -> end(AlertKind.SCALE_DRIFT, EndEstimate.ofDrift(stretch));
      case SCATTER_END -> end(AlertKind.SCATTER_GROWTH, EndEstimate.ofScatter(stretch));
      case AXIS_END -> end(AlertKind.ALTITUDE_TREND, EndEstimate.ofLens(stretch));
      case CLOCK_END -> end(AlertKind.CLOCK_SUSPECT, EndEstimate.ofLens(stretch));
      default -> {
        Estimated estimated = estimate(verdict.hypothesis(), stretch);
        verdict.kind().ifPresent(kind -> add(kind, change, verdict, estimated));
      }
    }
  }

  private static Estimated estimate(Hypothesis hypothesis, Stretch stretch) {
    return switch (hypothesis.change()) {
      case STEP -> StepEstimate.of(stretch);
      case DRIFT -> DriftEstimate.of(stretch);
      case SCATTER -> ScatterEstimate.of(stretch);
      case CALIBRATION -> CalibrationEstimate.ofOne(stretch, hypothesis.onset());
      case TARGET -> CalibrationEstimate.ofAll(stretch);
      case AXIS -> AltitudeEstimate.ofAxis(stretch, (AxisLens) hypothesis.lens());
      case FLATTENING -> AltitudeEstimate.ofRefraction(stretch);
      case CLOCK -> ClockEstimate.of(stretch, (ClockLens) hypothesis.lens());
      case SWING -> DepartureEstimate.ofSlope(stretch, Regressor.SWING);
      case RATIO ->
          hypothesis.cause() == Cause.NEAR_MOON
              ? DepartureEstimate.ofNearMoon(stretch)
              : DepartureEstimate.ofSlope(stretch, Regressor.RATIO);
      case NEAR_MOON -> DepartureEstimate.ofNearMoon(stretch);
      case NONE, DRIFT_END, SCATTER_END, AXIS_END, CLOCK_END ->
          throw new IllegalStateException("no estimate of " + hypothesis);
    };
  }

  /** Marks the latest finding of a kind as ended. */
  private void end(AlertKind kind, Instant until) {
    for (int i = findings.size() - 1; i >= 0; i--) {
      if (findings.get(i).kind() == kind) {
        findings.set(i, findings.get(i).endedAt(until));
        return;
      }
    }
  }

  private void add(AlertKind kind, Confirmed change, Verdict verdict, Estimated estimated) {
    List<Instant> evidence =
        facts.subList(Math.min(estimated.first(), change.evidence), change.evidence + 1).stream()
            .filter(Fact::isReading)
            .map(fact -> fact.at)
            .toList();
    findings.add(
        new Finding(
            kind,
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
            estimated.figures()));
  }
}

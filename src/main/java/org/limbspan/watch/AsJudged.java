package org.limbspan.watch;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.SetupScale;
import org.limbspan.drift.Figures;
import org.limbspan.drift.Finding;

/**
 * The readings with the rig's found changes taken into account: a step parts its setup in two
 * stretches of their own scale, a drift is taken out, readings with a wrong clock or axis are set
 * aside. Without that a nudged zoom would pass for the Moon's doing.
 */
final class AsJudged {

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

  private final List<Observation> observations;
  private final List<SetupScale> scales;
  private final List<String> remarks;

  private AsJudged(List<Observation> observations, List<SetupScale> scales, List<String> remarks) {
    this.observations = List.copyOf(observations);
    this.scales = List.copyOf(scales);
    this.remarks = List.copyOf(remarks);
  }

  List<Observation> observations() {
    return observations;
  }

  /** How well the scales of the stretches are known that were calibrated. */
  List<SetupScale> scales() {
    return scales;
  }

  /** What was done to the readings, in words. */
  List<String> remarks() {
    return remarks;
  }

  static AsJudged of(RigEvidence evidence, List<Finding> findings, ZoneId zone) {
    Stretches stretches = new Stretches(evidence.rigHistory().setups(), findings);
    List<Finding> byTime =
        findings.stream().sorted(Comparator.comparing(Finding::onsetAt)).toList();
    List<String> remarks = new ArrayList<>();
    List<Observation> kept = evidence.observations();
    for (Finding finding : byTime) {
      String day = DAY.format(finding.onsetAt().atZone(zone));
      switch (finding.kind()) {
        case SCALE_STEP ->
            remarks.add("From " + day + " on the scale is another: a stretch of its own.");
        case SCALE_DRIFT -> {
          kept = withoutDrift(kept, finding);
          remarks.add(
              "The scale drifts from "
                  + day
                  + " on; the drift, known only from the computed Moon, is taken"
                  + " out, so these readings are not independent of the prediction.");
        }
        case CLOCK_SUSPECT, ALTITUDE_TREND -> {
          int before = kept.size();
          kept = kept.stream().filter(observation -> !concerns(finding, observation)).toList();
          if (kept.size() < before) {
            remarks.add(
                (before - kept.size())
                    + " readings from "
                    + day
                    + " on are set aside until the alert ("
                    + finding.kind().label()
                    + ") is answered and they are put right.");
          }
        }
        case SCATTER_GROWTH, CALIBRATION_CONFLICT, SWING_DEPARTURE, RATIO_DEPARTURE -> {
          // these change no reading's size
        }
      }
    }
    return new AsJudged(kept.stream().map(stretches::place).toList(), stretches.scales(), remarks);
  }

  private static boolean concerns(Finding finding, Observation observation) {
    return observation.setup() == finding.setup()
        && !observation.takenAt().isBefore(finding.onsetAt())
        && finding.until().map(end -> observation.takenAt().isBefore(end)).orElse(true);
  }

  private static List<Observation> withoutDrift(List<Observation> observations, Finding drift) {
    if (!(drift.figures() instanceof Figures.Drift figures)) {
      return observations;
    }
    double perSecond = figures.percentPer30Days() / 100 / Duration.ofDays(30).toSeconds();
    return observations.stream()
        .map(
            observation ->
                observation.setup() == drift.setup()
                    ? Observations.with(
                        observation,
                        observation.setup(),
                        observation.observedArcmin()
                            * Math.exp(-perSecond * secondsInto(drift, observation.takenAt())))
                    : observation)
        .toList();
  }

  private static double secondsInto(Finding drift, Instant at) {
    Instant end = drift.until().filter(until -> until.isBefore(at)).orElse(at);
    return Math.max(0, Duration.between(drift.onsetAt(), end).toSeconds());
  }
}

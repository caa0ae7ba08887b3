package org.limbspan.dashboard;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.Observation;
import org.limbspan.sky.Site;
import org.limbspan.watch.Alert;
import org.limbspan.watch.CycleResult;
import org.limbspan.watch.HypothesesResult;
import org.limbspan.watch.NightsResult;
import org.limbspan.watch.OwnResult;

/**
 * What is held and judged of one rig, as its pages need it.
 *
 * @param revision how often what is held had changed when this was gathered
 * @param setupsStartedAt starts of all setups but the first, which is open from the beginning
 * @param calibratedAt instants of the calibrations
 * @param observations every reading beside the computed Moon, oldest first
 * @param inferred those of them whose setup has no calibration: their scale is taken from the
 *     computed Moon
 * @param uncalibrated readings left out of them, since nothing gives their setup a scale
 * @param alerts in the order in which the evidence was enough
 * @param pending whether facts are held that the judgement does not yet reflect
 * @param latest the latest readings as logged, newest first
 */
record LedgerFacts(
    long revision,
    String slug,
    String name,
    Site site,
    RigTime time,
    @Nullable String note,
    boolean invented,
    List<Instant> setupsStartedAt,
    List<Instant> calibratedAt,
    List<Observation> observations,
    Set<Observation> inferred,
    long uncalibrated,
    CycleResult cycle,
    NightsResult nights,
    HypothesesResult hypotheses,
    OwnResult own,
    List<Alert> alerts,
    Instant judgedAt,
    boolean pending,
    List<Logged> latest) {

  LedgerFacts {
    setupsStartedAt = List.copyOf(setupsStartedAt);
    calibratedAt = List.copyOf(calibratedAt);
    observations = List.copyOf(observations);
    inferred = Set.copyOf(inferred);
    alerts = alerts.stream().sorted(Comparator.comparing(Alert::evidenceAt)).toList();
    latest = List.copyOf(latest);
  }

  /**
   * A reading and what its observer noted.
   *
   * @param id of the reading, as its page's address tells it
   */
  record Logged(long id, Observation observation, String note) {}

  Optional<Instant> firstAt() {
    return observations.stream().findFirst().map(Observation::takenAt);
  }

  Optional<Instant> lastAt() {
    return observations.isEmpty()
        ? Optional.empty()
        : Optional.of(observations.get(observations.size() - 1).takenAt());
  }
}

package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.Sighted;
import org.limbspan.demo.Demo;
import org.limbspan.reading.Circumstances;
import org.limbspan.reading.Readings;
import org.limbspan.reading.StandardisedReading;
import org.limbspan.reading.Standing;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.rig.Setup;
import org.limbspan.watch.InferredReadings;
import org.limbspan.watch.Judgement;
import org.limbspan.watch.Watch;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.util.ConcurrentLruCache;

/** Gathers what is held and judged of a rig; those of the rigs read last are kept. */
@Component
class LedgerReader {

  private static final int LATEST = 20;
  private static final int MOST = 16;

  private final Rigs rigs;
  private final Readings readings;
  private final InferredReadings inferredReadings;
  private final Watch watch;

  /** Ten years of readings are some 4 MB. */
  private final ConcurrentLruCache<Long, AtomicReference<@Nullable Kept>> kept =
      new ConcurrentLruCache<>(MOST, rigId -> new AtomicReference<>());

  LedgerReader(Rigs rigs, Readings readings, InferredReadings inferredReadings, Watch watch) {
    this.rigs = rigs;
    this.readings = readings;
    this.inferredReadings = inferredReadings;
    this.watch = watch;
  }

  /** The readings of a rig as of a revision of its ledger. */
  private record Kept(
      long revision,
      List<Observation> observations,
      Set<Observation> inferred,
      List<LedgerFacts.Logged> latest,
      long count) {}

  /**
   * What is held and judged of the rig of that slug.
   *
   * @throws org.limbspan.platform.NotFound if there is none
   */
  @Transactional(readOnly = true)
  LedgerFacts read(String slug) {
    return read(slug, watch::judgement);
  }

  /** The same, perhaps without single nights, see {@link Watch#judgementInBrief}. */
  @Transactional(readOnly = true)
  LedgerFacts readInBrief(String slug) {
    return read(slug, watch::judgementInBrief);
  }

  private LedgerFacts read(String slug, Function<Rig, Judgement> newest) {
    Rig rig = rigs.find(slug);
    InstrumentHistory history = rigs.history(rig);
    Kept held = held(rig, history);
    Judgement judgement = newest.apply(rig);
    return new LedgerFacts(
        held.revision(),
        rig.slug(),
        rig.name(),
        rig.site(),
        new RigTime(rig.timeZone()),
        rig.note(),
        Demo.invented(rig),
        history.setups().stream().map(Setup::startedAt).flatMap(Optional::stream).toList(),
        history.calibrations().stream().map(RecordedCalibration::takenAt).toList(),
        held.observations(),
        held.inferred(),
        held.count() - held.observations().size(),
        judgement.cycle(),
        judgement.nights(),
        judgement.hypotheses(),
        judgement.own(),
        watch.alerts(rig),
        judgement.judgedAt(),
        judgement.pending(),
        held.latest());
  }

  private Kept held(Rig rig, InstrumentHistory history) {
    long revision = rigs.revision(rig.id());
    AtomicReference<@Nullable Kept> remembered = kept.get(rig.id());
    Kept before = remembered.get();
    if (before != null && before.revision() == revision) {
      return before;
    }
    Kept now = gather(history, revision);
    remembered.set(now);
    return now;
  }

  private Kept gather(InstrumentHistory history, long revision) {
    List<LedgerFacts.Logged> logged = new ArrayList<>();
    Standing standing = readings.standing(history);
    for (StandardisedReading reading : standing.standardised()) {
      logged.add(
          new LedgerFacts.Logged(
              reading.reading().id(),
              observation(reading),
              note(reading.reading().circumstances())));
    }
    Set<Observation> inferred = new HashSet<>();
    for (InferredReadings.InferredSetup setup : inferredReadings.of(history, standing.unscaled())) {
      for (InferredReadings.Inferred each : setup.readings()) {
        inferred.add(each.observation());
        logged.add(
            new LedgerFacts.Logged(
                each.reading().id(),
                each.observation(),
                note(each.reading().circumstances(), "scale not its own")));
      }
    }
    logged.sort(Comparator.comparing(each -> each.observation().takenAt()));
    return new Kept(
        revision,
        logged.stream().map(LedgerFacts.Logged::observation).toList(),
        inferred,
        latest(logged),
        standing.count());
  }

  private static List<LedgerFacts.Logged> latest(List<LedgerFacts.Logged> logged) {
    List<LedgerFacts.Logged> latest =
        new ArrayList<>(logged.subList(Math.max(0, logged.size() - LATEST), logged.size()));
    Collections.reverse(latest);
    return latest;
  }

  private static String note(Circumstances circumstances, String... first) {
    return Stream.concat(Stream.of(first), Stream.of(circumstances.sky(), circumstances.note()))
        .filter(Objects::nonNull)
        .collect(Collectors.joining("; "));
  }

  private static Observation observation(StandardisedReading standardised) {
    Circumstances circumstances = standardised.reading().circumstances();
    return new Observation(
        standardised.reading().takenAt(),
        standardised.reading().axis(),
        standardised.diameterArcmin(),
        standardised.relativeUncertainty(),
        standardised.sight(),
        standardised.setup(),
        new Sighted(told(circumstances.altitudeDeg()), told(circumstances.azimuthDeg())));
  }

  private static OptionalDouble told(@Nullable Double value) {
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}

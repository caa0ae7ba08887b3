package org.limbspan.dashboard;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.Sighted;
import org.limbspan.demo.Demo;
import org.limbspan.reading.Circumstances;
import org.limbspan.reading.Readings;
import org.limbspan.reading.StandardisedReading;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.rig.Setup;
import org.limbspan.watch.Judgement;
import org.limbspan.watch.Watch;
import org.springframework.stereotype.Component;

/** Gathers what is held and judged of a rig; readings are kept until its ledger changes. */
@Component
class LedgerReader {

  private static final int LATEST = 20;

  private final Rigs rigs;
  private final Readings readings;
  private final Watch watch;
  private final Map<Long, Kept> kept = new ConcurrentHashMap<>();

  LedgerReader(Rigs rigs, Readings readings, Watch watch) {
    this.rigs = rigs;
    this.readings = readings;
    this.watch = watch;
  }

  /** The readings of a rig as of a revision of its ledger. */
  private record Kept(long revision, List<StandardisedReading> readings, long count) {}

  /**
   * What is held and judged of the rig of that slug.
   *
   * @throws org.limbspan.platform.NotFound if there is none
   */
  LedgerFacts read(String slug) {
    Rig rig = rigs.find(slug);
    InstrumentHistory history = rigs.history(rig.id());
    Kept held = held(rig);
    Judgement judgement = watch.judgement(rig);
    return new LedgerFacts(
        rig.slug(),
        rig.name(),
        rig.site(),
        new RigTime(rig.timeZone()),
        rig.note(),
        Demo.invented(rig),
        history.setups().stream().map(Setup::startedAt).flatMap(Optional::stream).toList(),
        history.calibrations().stream().map(RecordedCalibration::takenAt).toList(),
        held.readings().stream().map(LedgerReader::observation).toList(),
        held.count() - held.readings().size(),
        judgement.cycle(),
        judgement.nights(),
        watch.alerts(rig),
        judgement.judgedAt(),
        judgement.pending(),
        latest(held.readings()));
  }

  private Kept held(Rig rig) {
    long revision = rigs.revision(rig.id());
    Kept before = kept.get(rig.id());
    if (before != null && before.revision() == revision) {
      return before;
    }
    List<StandardisedReading> standing =
        readings.standardised(rig.id()).stream()
            .sorted(Comparator.comparing(reading -> reading.reading().takenAt()))
            .toList();
    Kept now = new Kept(revision, standing, readings.count(rig.id()));
    kept.put(rig.id(), now);
    return now;
  }

  private static List<LedgerFacts.Logged> latest(List<StandardisedReading> standing) {
    return standing.stream()
        .skip(Math.max(0, standing.size() - LATEST))
        .map(
            reading ->
                new LedgerFacts.Logged(
                    observation(reading), note(reading.reading().circumstances())))
        .sorted(
            Comparator.comparing(
                logged -> logged.observation().takenAt(), Comparator.reverseOrder()))
        .toList();
  }

  private static String note(Circumstances circumstances) {
    return Stream.of(circumstances.sky(), circumstances.note())
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

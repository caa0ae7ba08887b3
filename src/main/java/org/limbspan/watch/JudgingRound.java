package org.limbspan.watch;

import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.limbspan.reading.Readings;
import org.limbspan.reading.RecordedReading;
import org.limbspan.reading.StandardisedReading;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/** Judges one rig: reads its ledger at one moment, computes, writes what came out. */
@Component
class JudgingRound {

  private static final Logger LOG = LoggerFactory.getLogger(JudgingRound.class);

  private final Rigs rigs;
  private final Readings readings;
  private final InferredReadings inferred;
  private final Judging judging;
  private final JudgementRepository judgements;
  private final AlertRepository alerts;
  private final AlertAnswers answers;
  private final ApplicationEventPublisher events;
  private final Clock clock;
  private final Timer duration;
  private final TransactionTemplate snapshot;
  private final TransactionTemplate writing;

  JudgingRound(
      Rigs rigs,
      Readings readings,
      InferredReadings inferred,
      Judging judging,
      JudgementRepository judgements,
      AlertRepository alerts,
      AlertAnswers answers,
      ApplicationEventPublisher events,
      Clock clock,
      MeterRegistry registry,
      PlatformTransactionManager transactions) {
    this.rigs = rigs;
    this.readings = readings;
    this.inferred = inferred;
    this.judging = judging;
    this.judgements = judgements;
    this.alerts = alerts;
    this.answers = answers;
    this.events = events;
    this.clock = clock;
    this.duration =
        Timer.builder("limbspan.judging.duration")
            .description("Time to read a rig's ledger, judge it and write the judgement")
            .register(registry);
    this.snapshot = new TransactionTemplate(transactions);
    this.snapshot.setReadOnly(true);
    this.snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
    this.writing = new TransactionTemplate(transactions);
  }

  /** Rigs whose judgement is missing, of another method, or behind their ledger. */
  List<Long> behind() {
    Map<Long, Long> reflected = judgements.reflected();
    return rigs.revisions().entrySet().stream()
        .filter(rig -> reflected.getOrDefault(rig.getKey(), -1L) < rig.getValue())
        .map(Map.Entry::getKey)
        .toList();
  }

  void judge(long rigId) {
    long began = System.nanoTime();
    Ledger ledger = snapshot.execute(status -> read(rigId));
    long read = System.nanoTime();
    Judging.Result result = judging.judge(ledger.history(), ledger.readings(), ledger.unscaled());
    long judged = System.nanoTime();
    writing.executeWithoutResult(status -> write(rigId, ledger, result));
    LOG.debug(
        "judged rig {}: {} readings, read in {} ms, judged in {} ms, written in {} ms",
        rigId,
        ledger.readings().size(),
        millis(read - began),
        millis(judged - read),
        millis(System.nanoTime() - judged));
    duration.record(Duration.ofNanos(System.nanoTime() - began));
  }

  private static long millis(long nanoseconds) {
    return Duration.ofNanos(nanoseconds).toMillis();
  }

  private Ledger read(long rigId) {
    InstrumentHistory history = rigs.history(rigId);
    return new Ledger(
        rigs.revision(rigId),
        history,
        readings.standardisedAgain(history),
        inferred.unscaledAgain(history));
  }

  private void write(long rigId, Ledger ledger, Judging.Result result) {
    judgements.lock(rigId);
    if (judgements.reflects(rigId, ledger.revision() + 1)) {
      return; // another instance has judged a newer ledger meanwhile
    }
    Instant now = clock.instant();
    Rig rig = ledger.history().rig();
    List<Alert> found =
        result.findings().stream()
            .map(finding -> AlertDraft.of(rig.slug(), rig.timeZone(), finding, now))
            .toList();
    Map<UUID, List<AlertReply>> replies = answers.byAlert(rigId);
    List<AlertRepository.Kept> before = alerts.list(rigId);
    List<AlertRepository.Kept> after =
        new Reconciler(ledger.instants(), now).reconcile(found, before, replies);
    alerts.replaceAll(rigId, before, after);
    judgements.save(rigId, ledger.revision(), now, result.document());
    AlertNews.between(rigId, before, after).forEach(events::publishEvent);
    events.publishEvent(new RigJudged(rigId, ledger.revision()));
  }

  private record Ledger(
      long revision,
      InstrumentHistory history,
      List<StandardisedReading> readings,
      List<RecordedReading> unscaled) {

    List<Instant> instants() {
      return Stream.concat(readings.stream().map(StandardisedReading::reading), unscaled.stream())
          .map(RecordedReading::takenAt)
          .toList();
    }
  }
}

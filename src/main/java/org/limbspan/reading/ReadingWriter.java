package org.limbspan.reading;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.NotFound;
import org.limbspan.platform.Violation;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Axis;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Writes to the ledger of readings; every method is one transaction, one at a time for a rig. */
@Component
class ReadingWriter {

  private final ReadingStore store;
  private final Rigs rigs;
  private final ApplicationEventPublisher events;
  private final Clock clock;

  ReadingWriter(ReadingStore store, Rigs rigs, ApplicationEventPublisher events, Clock clock) {
    this.store = store;
    this.rigs = rigs;
    this.events = events;
    this.clock = clock;
  }

  /** Part by part, so that what is held of a long batch never lies in memory whole. */
  @Transactional
  IntakeReport record(Rig rig, List<NewReading> readings, BadLines badLines) {
    rigs.lock(rig.id());
    SetupUnits units =
        new SetupUnits(
            () -> rigs.history(rig), setup -> store.lengthUnit(rig.id(), ReadingSpan.of(setup)));
    units.settleBy(readings);
    ReadingBatch batch = new ReadingBatch(units, Contradictions.in(readings));
    for (List<NewReading> part : Chunks.of(readings, ReadingStore.ROWS_AT_ONCE)) {
      List<NumberedReading> toStore = batch.sort(part, versions(rig, part));
      if (badLines == BadLines.KEEP_GOOD || batch.isSound()) {
        store.insert(rig.id(), toStore, now());
      }
    }
    if (badLines == BadLines.REFUSE_BATCH) {
      batch.requireSound();
    }
    IntakeReport report = batch.report();
    if (report.stored() > 0) {
      rigs.recordChange(rig.id());
      events.publishEvent(new ReadingsRecorded(rig.id(), rig.slug()));
    }
    return report;
  }

  /** Takes a reading back; once is enough. */
  @Transactional
  void withdraw(Rig rig, long id, String reason) {
    rigs.lock(rig.id());
    RecordedReading reading = standing(rig, id);
    store.withdraw(rig.id(), reading, reason, now());
    rigs.recordChange(rig.id());
    events.publishEvent(new ReadingWithdrawn(rig.id(), rig.slug()));
  }

  /** Takes a reading back and enters it along another axis. */
  @Transactional
  RecordedReading relabel(Rig rig, long id, Axis axis, String reason) {
    rigs.lock(rig.id());
    RecordedReading reading = standing(rig, id);
    ReadingKey key = new ReadingKey(reading.takenAt(), axis);
    Versions there = versions(rig, key);
    if (there.standing().isPresent()) {
      throw new Conflict(
          "A reading along that axis is held for that instant.",
          new Violation("axis", axis.label(), "an axis without a reading at that instant"));
    }
    store.withdraw(rig.id(), reading, reason, now());
    store.insert(
        rig.id(), List.of(new NumberedReading(along(axis, reading), there.nextNumber())), now());
    rigs.recordChange(rig.id());
    events.publishEvent(new ReadingRelabelled(rig.id(), rig.slug()));
    return versions(rig, key).standing().orElseThrow();
  }

  private RecordedReading standing(Rig rig, long id) {
    RecordedReading asked =
        store
            .byId(rig.id(), id)
            .map(Version::reading)
            .orElseThrow(() -> new NotFound("reading", "id", id));
    ReadingKey key = new ReadingKey(asked.takenAt(), asked.axis());
    return versions(rig, key)
        .standing()
        .filter(reading -> reading.id() == id)
        .orElseThrow(
            () ->
                new Conflict(
                    "Reading " + id + " was superseded or taken back before.",
                    new Violation("id", id, "the id of a reading that stands")));
  }

  private Versions versions(Rig rig, ReadingKey key) {
    return store.versions(rig.id(), Set.of(key)).getOrDefault(key, new Versions());
  }

  private Map<ReadingKey, Versions> versions(Rig rig, List<NewReading> readings) {
    Set<ReadingKey> keys = new HashSet<>();
    readings.forEach(reading -> keys.add(reading.key()));
    return store.versions(rig.id(), keys);
  }

  private static NewReading along(Axis axis, RecordedReading reading) {
    return new NewReading(
        reading.takenAt(),
        axis,
        reading.diameter(),
        reading.frames(),
        reading.circumstances(),
        OnConflict.SUPERSEDE,
        null);
  }

  private Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MICROS);
  }
}

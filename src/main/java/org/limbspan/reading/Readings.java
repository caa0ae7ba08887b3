package org.limbspan.reading;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * The readings of the ledger. They are only ever added: a correction supersedes, a withdrawal says
 * why, and what stands is derived.
 */
@Service
public class Readings {

  private final ReadingStore store;
  private final ReadingPartitions partitions;
  private final ReadingWriter writer;
  private final Rigs rigs;
  private final Sky sky;
  private final StandingMemory standing;
  private final ReadingMeters meters;

  Readings(
      ReadingStore store,
      ReadingPartitions partitions,
      ReadingWriter writer,
      Rigs rigs,
      Sky sky,
      StandingMemory standing,
      ReadingMeters meters) {
    this.store = store;
    this.partitions = partitions;
    this.writer = writer;
    this.rigs = rigs;
    this.sky = sky;
    this.standing = standing;
    this.meters = meters;
  }

  /**
   * Enters readings in one transaction; never called within another, see {@link ReadingPartitions}.
   *
   * @param readings each within the ephemeris
   * @throws org.limbspan.platform.InvalidInput if one is in another unit than its setup, or two
   *     contradict each other, unless the good ones are to be kept
   * @throws org.limbspan.platform.Conflict if another diameter is held for an instant and axis,
   *     unless the good ones are to be kept
   */
  @Transactional(propagation = Propagation.NEVER)
  public IntakeReport record(Rig rig, List<NewReading> readings, BadLines badLines) {
    partitions.makeFor(readings.stream().map(NewReading::takenAt).toList());
    IntakeReport report = writer.record(rig, readings, badLines);
    meters.recorded(report.stored());
    return report;
  }

  /** Takes a reading back, saying why. */
  public void withdraw(Rig rig, long id, String reason) {
    writer.withdraw(rig, id, reason);
  }

  /** Says that a reading was measured along another axis, and why. */
  public RecordedReading relabel(Rig rig, long id, Axis axis, String reason) {
    return writer.relabel(rig, id, axis, reason);
  }

  /** How many readings of a rig stand, and from when to when. */
  @Transactional(readOnly = true)
  public Extent extent(long rigId) {
    return store.extent(rigId);
  }

  /** When the latest reading of a rig that stands was taken; empty if it has none. */
  @Transactional(readOnly = true)
  public Optional<Instant> latestTakenAt(long rigId) {
    return store.latestTakenAt(rigId);
  }

  /**
   * All readings of a rig that stand, as angles beside the computed Moon, oldest first; without
   * those in a setup that has no calibration.
   */
  @Transactional(readOnly = true)
  public List<StandardisedReading> standardised(long rigId) {
    return standing(rigs.history(rigId)).standardised();
  }

  /** All readings of a rig that stand, read once. */
  @Transactional(readOnly = true)
  public Standing standing(InstrumentHistory history) {
    Standardiser standardiser = new Standardiser(history, sky::moonAt);
    List<StandardisedReading> standardised = new ArrayList<>();
    List<RecordedReading> unscaled = new ArrayList<>();
    try (Stream<RecordedReading> found = store.stream(history.rig().id(), ReadingSpan.ALL)) {
      found.forEach(
          reading ->
              standardiser
                  .standardise(reading)
                  .ifPresentOrElse(standardised::add, () -> unscaled.add(reading)));
    }
    return new Standing(standardised, unscaled);
  }

  /**
   * The same as {@link #standardised}, for one who asks again with every reading: only what was
   * added since is read. Within a transaction on the database that is written to.
   */
  @Transactional(readOnly = true)
  public List<StandardisedReading> standardisedAgain(InstrumentHistory history) {
    return standing.standardised(history);
  }

  /** The same as {@link #between}, as {@link #standardisedAgain}. */
  @Transactional(readOnly = true)
  public List<RecordedReading> betweenAgain(long rigId, Instant from, Instant to) {
    return standing.between(rigId, from, to);
  }

  /** A reading by its id, whether or not it still stands; empty if the rig has none of that id. */
  @Transactional(readOnly = true)
  public Optional<RecordedReading> find(long rigId, long id) {
    return store.byId(rigId, id).filter(Version::isHeld).map(Version::reading);
  }

  /** A reading beside the computed Moon; empty if its setup has no calibration. */
  @Transactional(readOnly = true)
  public Optional<StandardisedReading> standardise(long rigId, RecordedReading reading) {
    return new Standardiser(rigs.history(rigId), sky::moonAt).standardise(reading);
  }

  /** The readings of a rig that stand with {@code from <= takenAt < to}, as entered. */
  @Transactional(readOnly = true)
  public List<RecordedReading> between(long rigId, Instant from, Instant to) {
    try (Stream<RecordedReading> found = store.stream(rigId, ReadingSpan.between(from, to))) {
      return found.toList();
    }
  }
}

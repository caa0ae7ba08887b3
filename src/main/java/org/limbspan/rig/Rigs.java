package org.limbspan.rig;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.limbspan.platform.NotFound;
import org.limbspan.sky.HorizonLine;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * The part of the ledger that describes the instrument. Facts are only ever added; what stands is
 * derived from them. Every change counts in the revision of its rig.
 */
@Service
public class Rigs {

  private final RigRepository rigs;
  private final InstrumentHistories histories;
  private final LedgerRevision revision;
  private final RigWriter rigWriter;
  private final SetupWriter setupWriter;
  private final CalibrationWriter calibrationWriter;
  private final HorizonShelf horizons;

  Rigs(
      RigRepository rigs,
      InstrumentHistories histories,
      LedgerRevision revision,
      RigWriter rigWriter,
      SetupWriter setupWriter,
      CalibrationWriter calibrationWriter,
      HorizonShelf horizons) {
    this.rigs = rigs;
    this.histories = histories;
    this.revision = revision;
    this.rigWriter = rigWriter;
    this.setupWriter = setupWriter;
    this.calibrationWriter = calibrationWriter;
    this.horizons = horizons;
  }

  /** All rigs by slug. */
  @Transactional(readOnly = true)
  public List<Rig> all() {
    return rigs.findAllByOrderBySlug().stream().map(RigEntity::toRig).toList();
  }

  /**
   * The rig of that slug.
   *
   * @throws NotFound if there is none
   */
  @Transactional(readOnly = true)
  public Rig find(String slug) {
    return rigs.findBySlug(slug)
        .map(RigEntity::toRig)
        .orElseThrow(() -> new NotFound("rig", "slug", slug));
  }

  /**
   * The rig of that id.
   *
   * @throws NotFound if there is none
   */
  @Transactional(readOnly = true)
  public Rig find(long rigId) {
    return rigs.findById(rigId)
        .map(RigEntity::toRig)
        .orElseThrow(() -> new NotFound("rig", "id", rigId));
  }

  /** Setups, calibrations and plate scales of a rig as they stand. */
  @Transactional(readOnly = true)
  public InstrumentHistory history(long rigId) {
    return history(find(rigId));
  }

  /** The same. */
  @Transactional(readOnly = true)
  public InstrumentHistory history(Rig rig) {
    return histories.of(rig);
  }

  /** How often what is held of the rig has changed. */
  @Transactional(readOnly = true)
  public long revision(long rigId) {
    return revision.read(rigId);
  }

  /** The same of all rigs, by their ids. */
  @Transactional(readOnly = true)
  public Map<Long, Long> revisions() {
    return revision.all();
  }

  /** Within a writing transaction: lets nobody else write to this rig's ledger until its end. */
  @Transactional(propagation = Propagation.MANDATORY)
  public void lock(long rigId) {
    revision.lock(rigId);
  }

  /** Within a writing transaction: counts a change; answers the new revision. */
  @Transactional(propagation = Propagation.MANDATORY)
  public long recordChange(long rigId) {
    return revision.advance(rigId);
  }

  /**
   * Enters a rig.
   *
   * @throws org.limbspan.platform.Conflict if the slug is taken
   */
  @Transactional
  public Rig describe(NewRig rig) {
    return rigWriter.describe(rig);
  }

  /**
   * Enters that from an instant on camera, zoom or mount is another.
   *
   * @throws org.limbspan.platform.Conflict if one from that instant is held with another note
   */
  @Transactional
  public Entered<Setup> openSetup(Rig rig, NewSetup setup) {
    return setupWriter.open(rig, setup);
  }

  /** Takes a setup back, saying why. */
  @Transactional
  public void withdrawSetup(Rig rig, long setupId, String reason) {
    setupWriter.withdraw(rig, setupId, reason);
  }

  /**
   * Enters calibrations, all or none.
   *
   * @throws org.limbspan.platform.InvalidInput if one is in another unit than its setup
   * @throws org.limbspan.platform.Conflict if another value is held for the same photograph
   */
  @Transactional
  public List<Entered<RecordedCalibration>> record(Rig rig, List<NewCalibration> calibrations) {
    return calibrationWriter.record(rig, calibrations);
  }

  /** Takes a calibration back, saying why. */
  @Transactional
  public void withdrawCalibration(Rig rig, long calibrationId, String reason) {
    calibrationWriter.withdraw(rig, calibrationId, reason);
  }

  /** The rig's own horizon as it stands; empty if none was entered, or it was taken back. */
  @Transactional(readOnly = true)
  public Optional<RecordedHorizon> horizon(long rigId) {
    return horizons.standing(rigId);
  }

  /** Enters the rig's own horizon; it takes the place of the one before. */
  @Transactional
  public Entered<RecordedHorizon> enterHorizon(Rig rig, HorizonLine line) {
    return horizons.enter(rig, line);
  }

  /**
   * Takes the rig's own horizon back, saying why.
   *
   * @throws NotFound if none stands
   */
  @Transactional
  public void withdrawHorizon(Rig rig, String reason) {
    horizons.withdraw(rig, reason);
  }

  /** The setup in force at an instant. */
  @Transactional(readOnly = true)
  public Setup setupAt(long rigId, Instant at) {
    return InstrumentHistory.setupAt(histories.setups(rigId), at);
  }
}

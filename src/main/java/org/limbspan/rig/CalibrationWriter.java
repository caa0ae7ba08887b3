package org.limbspan.rig;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.NotFound;
import org.limbspan.platform.Violation;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;

/** Enters and takes back calibrations. */
@Component
class CalibrationWriter {

  private final CalibrationRepository calibrations;
  private final WithdrawalRepository withdrawals;
  private final InstrumentHistories histories;
  private final UnitGuard units;
  private final LedgerRevision revision;
  private final ApplicationEventPublisher events;
  private final Clock clock;

  CalibrationWriter(
      CalibrationRepository calibrations,
      WithdrawalRepository withdrawals,
      InstrumentHistories histories,
      UnitGuard units,
      LedgerRevision revision,
      ApplicationEventPublisher events,
      Clock clock) {
    this.calibrations = calibrations;
    this.withdrawals = withdrawals;
    this.histories = histories;
    this.units = units;
    this.revision = revision;
    this.events = events;
    this.clock = clock;
  }

  /** Enters all of a batch or, if one cannot be taken, none. */
  List<Entered<RecordedCalibration>> record(Rig rig, List<NewCalibration> batch) {
    revision.lock(rig.id());
    CalibrationShelf shelf = shelf(rig);
    List<Violation> refused = new ArrayList<>();
    List<Violation> conflicts = new ArrayList<>();
    List<Entered<RecordedCalibration>> answers = new ArrayList<>();
    for (NewCalibration fact : batch) {
      if (!shelf.takesUnitOf(fact)) {
        refused.add(shelf.unitViolation(fact));
      } else if (shelf.contradicts(fact)) {
        conflicts.add(shelf.conflictViolation(fact));
      } else {
        answers.add(enter(rig, fact, shelf));
      }
    }
    require(refused, conflicts);
    if (answers.stream().anyMatch(each -> each.outcome() == Entered.Outcome.STORED)) {
      revision.advance(rig.id());
      events.publishEvent(new CalibrationsRecorded(rig.id(), rig.slug()));
    }
    return answers;
  }

  private CalibrationShelf shelf(Rig rig) {
    List<Setup> setups = histories.setups(rig.id());
    return new CalibrationShelf(
        setups,
        calibrations.findAll(rig.id()),
        calibrations.findWithdrawnIds(rig.id()),
        units.unitsBySetup(rig.id(), setups));
  }

  private Entered<RecordedCalibration> enter(Rig rig, NewCalibration fact, CalibrationShelf shelf) {
    Optional<Entered<RecordedCalibration>> held = shelf.held(fact);
    if (held.isPresent()) {
      return held.get();
    }
    shelf
        .standing(fact)
        .ifPresent(old -> withdrawals.withdrawCalibration(old.id(), "superseded", clock.instant()));
    CalibrationEntity stored =
        calibrations.save(
            new CalibrationEntity(rig.id(), fact, shelf.nextVersion(fact), clock.instant()));
    return new Entered<>(shelf.put(stored), Entered.Outcome.STORED);
  }

  private static void require(List<Violation> refused, List<Violation> conflicts) {
    if (!refused.isEmpty()) {
      throw InvalidInput.inBody(refused);
    }
    if (!conflicts.isEmpty()) {
      throw new Conflict(
          "Another calibration is held for the same photograph; nothing was stored.", conflicts);
    }
  }

  void withdraw(Rig rig, long calibrationId, String reason) {
    revision.lock(rig.id());
    if (calibrations.findAll(rig.id()).stream().noneMatch(each -> each.id() == calibrationId)) {
      throw new NotFound("calibration", "id", calibrationId);
    }
    if (calibrations.findWithdrawnIds(rig.id()).contains(calibrationId)) {
      return;
    }
    withdrawals.withdrawCalibration(calibrationId, reason, clock.instant());
    revision.advance(rig.id());
    events.publishEvent(new CalibrationWithdrawn(rig.id(), rig.slug()));
  }
}

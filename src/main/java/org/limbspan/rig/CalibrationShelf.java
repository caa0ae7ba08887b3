package org.limbspan.rig;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.limbspan.platform.Violation;
import org.limbspan.scale.LengthUnit;

/** What a rig holds of calibrations while a batch is entered, and how an entry relates to it. */
final class CalibrationShelf {

  private final List<Setup> setups;
  private final Map<CalibrationKey, List<CalibrationEntity>> versions = new HashMap<>();
  private final Set<Long> withdrawn;
  private final Map<Integer, Set<LengthUnit>> units;

  CalibrationShelf(
      List<Setup> setups,
      List<CalibrationEntity> all,
      List<Long> withdrawn,
      Map<Integer, Set<LengthUnit>> units) {
    this.setups = setups;
    this.withdrawn = new HashSet<>(withdrawn);
    this.units = units;
    all.forEach(each -> of(each.key()).add(each));
  }

  boolean takesUnitOf(NewCalibration fact) {
    Set<LengthUnit> its = units(setup(fact));
    return its.isEmpty() || its.contains(unit(fact));
  }

  Violation unitViolation(NewCalibration fact) {
    LengthUnit held = units(setup(fact)).iterator().next();
    Setup setup = setup(fact);
    String expected = "a length in " + held.symbol() + ", the unit of setup ";
    return atLine(
        fact,
        new Violation(
                "measured" + unit(fact).suffix(),
                fact.calibration().measured().value(),
                expected + setup.number())
            .onPages(expected + setup.numberOnPages()));
  }

  /** Whether another value stands for the same photograph and the entry does not supersede it. */
  boolean contradicts(NewCalibration fact) {
    return fact.conflict() == OnConflict.REFUSE
        && standing(fact).isPresent()
        && sameContent(fact).isEmpty();
  }

  Violation conflictViolation(NewCalibration fact) {
    return atLine(
        fact,
        new Violation(
                "takenAt",
                fact.takenAt(),
                "the calibration held for that instant, another instant, or supersedes: true")
            .onPages(
                "the calibration held for that instant, another instant, or that one taken back"
                    + " first"));
  }

  /** The answer for an entry that changes nothing; empty if it is to be stored. */
  Optional<Entered<RecordedCalibration>> held(NewCalibration fact) {
    Optional<CalibrationEntity> standing = standing(fact);
    boolean stands =
        standing.isPresent() && standing.get().calibration().equals(fact.calibration());
    if (sameContent(fact).isEmpty() || (fact.conflict() == OnConflict.SUPERSEDE && !stands)) {
      return Optional.empty();
    }
    Entered.Outcome outcome =
        standing.isPresent() ? Entered.Outcome.ALREADY_HELD : Entered.Outcome.HELD_AS_WITHDRAWN;
    CalibrationEntity answer = standing.orElseGet(() -> sameContent(fact).orElseThrow());
    return Optional.of(new Entered<>(toRecord(answer), outcome));
  }

  Optional<CalibrationEntity> standing(NewCalibration fact) {
    return of(key(fact)).stream().filter(each -> !withdrawn.contains(each.id())).findFirst();
  }

  int nextVersion(NewCalibration fact) {
    return of(key(fact)).size() + 1;
  }

  /** Puts what was just stored in the place of what stood before. */
  RecordedCalibration put(CalibrationEntity stored) {
    of(stored.key()).forEach(each -> withdrawn.add(each.id()));
    of(stored.key()).add(stored);
    units(setupAt(stored)).add(stored.calibration().measured().unit());
    return toRecord(stored);
  }

  private Optional<CalibrationEntity> sameContent(NewCalibration fact) {
    return of(key(fact)).stream()
        .filter(each -> each.calibration().equals(fact.calibration()))
        .findFirst();
  }

  private List<CalibrationEntity> of(CalibrationKey key) {
    return versions.computeIfAbsent(key, each -> new ArrayList<>());
  }

  private Set<LengthUnit> units(Setup setup) {
    return units.computeIfAbsent(setup.number(), each -> EnumSet.noneOf(LengthUnit.class));
  }

  private RecordedCalibration toRecord(CalibrationEntity entity) {
    return entity.toRecord(setupAt(entity).number());
  }

  private Setup setupAt(CalibrationEntity entity) {
    return InstrumentHistory.setupAt(setups, entity.takenAt());
  }

  private Setup setup(NewCalibration fact) {
    return InstrumentHistory.setupAt(setups, fact.takenAt());
  }

  private static LengthUnit unit(NewCalibration fact) {
    return fact.calibration().measured().unit();
  }

  private static CalibrationKey key(NewCalibration fact) {
    return CalibrationKey.of(fact.takenAt(), fact.calibration());
  }

  private static Violation atLine(NewCalibration fact, Violation violation) {
    return fact.line() == null ? violation : violation.atLine(fact.line());
  }
}

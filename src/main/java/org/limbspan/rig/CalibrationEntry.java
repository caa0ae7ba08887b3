package org.limbspan.rig;

import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.limbspan.intake.Entry;
import org.limbspan.intake.Range;
import org.limbspan.scale.Calibration;
import org.limbspan.scale.ImageLength;
import org.limbspan.scale.LengthUnit;
import org.limbspan.scale.Reference;
import org.limbspan.scale.StarPair;
import org.limbspan.scale.Target;

/** Reads calibrations from what a client sent. */
final class CalibrationEntry {

  static final List<Set<String>> REQUIRED_COLUMNS =
      List.of(
          Set.of("takenAt"),
          Set.of("targetLengthMm", "separationArcmin"),
          Set.of("measuredPx", "measuredMm"));

  private static final Set<String> FIELDS =
      new LinkedHashSet<>(
          List.of(
              "takenAt",
              "method",
              "targetLengthMm",
              "targetLengthUncertaintyMm",
              "targetDistanceM",
              "targetDistanceUncertaintyM",
              "separationArcmin",
              "separationUncertaintyArcmin",
              "measuredPx",
              "measuredUncertaintyPx",
              "measuredMm",
              "measuredUncertaintyMm",
              "note",
              "supersedes"));

  private static final Range LENGTH = Range.positiveTo(1e6);
  private static final Range UNCERTAINTY = Range.between(0, 1e6);

  private final Instant now;
  private final OnConflict onConflict;

  CalibrationEntry(Instant now, OnConflict onConflict) {
    this.now = now;
    this.onConflict = onConflict;
  }

  /** The calibration of an entry; empty if it has violations. */
  Optional<NewCalibration> read(Entry entry) {
    Optional<Instant> takenAt = entry.instantUpTo("takenAt", now);
    Optional<Reference> reference = method(entry).flatMap(method -> reference(entry, method));
    Optional<ImageLength> measured = measured(entry);
    Optional<String> note = entry.noteWithRest("note", FIELDS, 2000);
    OnConflict conflict = entry.flag("supersedes") ? OnConflict.SUPERSEDE : onConflict;
    if (!entry.isSound()) {
      return Optional.empty();
    }
    return Optional.of(
        new NewCalibration(
            takenAt.orElseThrow(),
            new Calibration(reference.orElseThrow(), measured.orElseThrow()),
            note.orElse(null),
            conflict,
            entry.line()));
  }

  /** A CSV file of sheets needs no column for it. */
  private static Optional<CalibrationMethod> method(Entry entry) {
    if (!entry.has("method") && entry.isLineOfCsv()) {
      return Optional.of(
          entry.has("separationArcmin") ? CalibrationMethod.STAR_PAIR : CalibrationMethod.TARGET);
    }
    return entry.choice("method", CalibrationMethod.byLabel());
  }

  private static Optional<Reference> reference(Entry entry, CalibrationMethod method) {
    return switch (method) {
      case TARGET -> target(entry);
      case STAR_PAIR -> starPair(entry);
    };
  }

  private static Optional<Reference> target(Entry entry) {
    OptionalDouble lengthMm = entry.number("targetLengthMm", LENGTH);
    OptionalDouble lengthUncertaintyMm =
        entry.uncertainty("targetLengthUncertaintyMm", UNCERTAINTY, lengthMm);
    OptionalDouble distanceM = entry.number("targetDistanceM", LENGTH);
    OptionalDouble distanceUncertaintyM =
        entry.uncertainty("targetDistanceUncertaintyM", UNCERTAINTY, distanceM);
    if (!entry.isSound()) {
      return Optional.empty();
    }
    return Optional.of(
        new Target(
            lengthMm.orElseThrow(),
            lengthUncertaintyMm.orElseThrow(),
            distanceM.orElseThrow(),
            distanceUncertaintyM.orElseThrow()));
  }

  private static Optional<Reference> starPair(Entry entry) {
    OptionalDouble separation = entry.number("separationArcmin", Range.positiveTo(10_799));
    OptionalDouble uncertainty =
        entry.uncertainty("separationUncertaintyArcmin", UNCERTAINTY, separation);
    if (!entry.isSound()) {
      return Optional.empty();
    }
    return Optional.of(new StarPair(separation.orElseThrow(), uncertainty.orElseThrow()));
  }

  private static Optional<ImageLength> measured(Entry entry) {
    LengthUnit unit = entry.has("measuredMm") ? LengthUnit.MILLIMETRE : LengthUnit.PIXEL;
    if (entry.has("measuredMm") && entry.has("measuredPx")) {
      entry.refuse("measuredMm", "either pixels or millimetres, not both");
      return Optional.empty();
    }
    OptionalDouble value = entry.number("measured" + unit.suffix(), LENGTH);
    OptionalDouble uncertainty =
        entry.uncertainty("measuredUncertainty" + unit.suffix(), LENGTH, value);
    if (value.isEmpty() || uncertainty.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new ImageLength(value.getAsDouble(), uncertainty.getAsDouble(), unit));
  }
}

package org.limbspan.reading;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.limbspan.intake.Entry;
import org.limbspan.intake.Range;
import org.limbspan.rig.OnConflict;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Sky;

/** Reads readings from what a client sent. */
final class ReadingEntry {

  static final List<Set<String>> REQUIRED_COLUMNS =
      List.of(
          Set.of("takenAt"),
          Set.of("axis"),
          Set.of("diameterPx", "diameterMm", "diameterArcmin", "framesPx", "framesMm"));

  /** A protractor held to the zenith errs to both sides of it. */
  private static final Range SIGHTED_ALTITUDE_DEG = Range.between(-90, 92);

  private static final Set<String> FIELDS = fields();
  static final Map<String, Axis> AXES = axes();

  private static final int LONGEST_NOTE = 4000;
  private static final int LONGEST_SKY = 500;

  private final Sky sky;
  private final Instant now;
  private final OnConflict onConflict;

  ReadingEntry(Sky sky, Instant now, OnConflict onConflict) {
    this.sky = sky;
    this.now = now;
    this.onConflict = onConflict;
  }

  /** The reading of an entry; empty if it has violations. */
  Optional<NewReading> read(Entry entry) {
    Optional<Instant> takenAt = takenAt(entry);
    Optional<Axis> axis = entry.choice("axis", AXES);
    Optional<DiameterEntry> diameter = DiameterEntry.read(entry);
    Circumstances circumstances = circumstances(entry);
    OnConflict conflict = entry.flag("supersedes") ? OnConflict.SUPERSEDE : onConflict;
    if (!entry.isSound()) {
      return Optional.empty();
    }
    return Optional.of(
        new NewReading(
            takenAt.orElseThrow(),
            axis.orElseThrow(),
            diameter.orElseThrow().diameter(),
            diameter.orElseThrow().frames(),
            circumstances,
            conflict,
            entry.line()));
  }

  private Optional<Instant> takenAt(Entry entry) {
    Optional<Instant> takenAt = entry.instantUpTo("takenAt", now);
    if (takenAt.isPresent()
        && (takenAt.get().isBefore(sky.ephemerisFrom())
            || !takenAt.get().isBefore(sky.ephemerisTo()))) {
      entry.refuse(
          "takenAt",
          "an instant from %s to before %s, the reach of the ephemeris"
              .formatted(sky.ephemerisFrom(), sky.ephemerisTo()));
      return Optional.empty();
    }
    return takenAt;
  }

  private static Circumstances circumstances(Entry entry) {
    return new Circumstances(
        orNull(entry.optionalNumber("altitudeDeg", SIGHTED_ALTITUDE_DEG)),
        orNull(entry.optionalNumber("azimuthDeg", Range.between(0, 360))),
        orNull(entry.optionalNumber("exposureS", Range.positiveTo(86_400))),
        orNull(entry.optionalWhole("iso", Range.between(1, 10_000_000))),
        orNull(entry.optionalNumber("fNumber", Range.positiveTo(10_000))),
        entry.optionalText("sky", LONGEST_SKY).orElse(null),
        entry.noteWithRest("note", FIELDS, LONGEST_NOTE).orElse(null));
  }

  private static @Nullable Double orNull(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }

  private static @Nullable Integer orNull(OptionalInt value) {
    return value.isPresent() ? value.getAsInt() : null;
  }

  private static Map<String, Axis> axes() {
    Map<String, Axis> axes = new LinkedHashMap<>();
    for (Axis axis : Axis.values()) {
      axes.put(axis.label(), axis);
    }
    return axes;
  }

  private static Set<String> fields() {
    Set<String> fields = new LinkedHashSet<>(List.of("takenAt", "axis"));
    for (DiameterUnit unit : DiameterUnit.values()) {
      fields.add("diameter" + unit.suffix());
      fields.add("uncertainty" + unit.suffix());
      fields.add("frames" + unit.suffix());
    }
    fields.addAll(
        List.of("altitudeDeg", "azimuthDeg", "exposureS", "iso", "fNumber", "sky", "note"));
    fields.add("supersedes");
    return fields;
  }
}

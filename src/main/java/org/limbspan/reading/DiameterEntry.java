package org.limbspan.reading;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.limbspan.intake.Entry;
import org.limbspan.intake.Range;

/**
 * The diameter of an entry: in one of the units, told itself or by its frames, with an uncertainty
 * told itself or by their scatter.
 */
record DiameterEntry(Diameter diameter, List<Double> frames) {

  static Optional<DiameterEntry> read(Entry entry) {
    List<DiameterUnit> units =
        Arrays.stream(DiameterUnit.values())
            .filter(
                unit ->
                    entry.has("diameter" + unit.suffix()) || entry.has("frames" + unit.suffix()))
            .toList();
    if (units.size() > 1) {
      units.forEach(
          unit ->
              entry.refuse("diameter" + unit.suffix(), "a diameter in one unit: px, mm or arcmin"));
      return Optional.empty();
    }
    return read(entry, units.isEmpty() ? DiameterUnit.PIXEL : units.get(0));
  }

  private static Optional<DiameterEntry> read(Entry entry, DiameterUnit unit) {
    List<Double> frames = entry.numbers("frames" + unit.suffix(), range(unit));
    OptionalDouble value = value(entry, unit, frames);
    if (value.isEmpty()) {
      return Optional.empty();
    }
    OptionalDouble uncertainty = uncertainty(entry, unit, frames, value);
    if (uncertainty.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new DiameterEntry(
            new Diameter(value.getAsDouble(), uncertainty.getAsDouble(), unit), frames));
  }

  private static OptionalDouble value(Entry entry, DiameterUnit unit, List<Double> frames) {
    String name = "diameter" + unit.suffix();
    if (!entry.has(name) && frames.size() >= FrameScatter.FEWEST) {
      return OptionalDouble.of(FrameScatter.mean(frames));
    }
    OptionalDouble value = entry.number(name, range(unit));
    if (value.isPresent() && !frames.isEmpty() && !isAmong(value.getAsDouble(), frames)) {
      entry.refuse(
          name,
          "a diameter between the least and the greatest of its frames, %s and %s"
              .formatted(Collections.min(frames), Collections.max(frames)));
      return OptionalDouble.empty();
    }
    return value;
  }

  private static OptionalDouble uncertainty(
      Entry entry, DiameterUnit unit, List<Double> frames, OptionalDouble value) {
    String name = "uncertainty" + unit.suffix();
    if (entry.has(name)) {
      return entry.uncertainty(name, range(unit), value);
    }
    OptionalDouble ofFrames = FrameScatter.uncertaintyOfMean(frames);
    if (ofFrames.isEmpty() || ofFrames.getAsDouble() >= value.orElseThrow()) {
      entry.refuse(
          name,
          "a standard uncertainty, or three or more frames that differ, in "
              + entry.written("frames" + unit.suffix()));
      return OptionalDouble.empty();
    }
    return ofFrames;
  }

  private static boolean isAmong(double value, List<Double> frames) {
    return value >= Collections.min(frames) && value <= Collections.max(frames);
  }

  /** What a disc can measure; arcminutes end well before an arcsecond's figure begins. */
  private static Range range(DiameterUnit unit) {
    return switch (unit) {
      case PIXEL -> Range.positiveTo(1_000_000);
      case MILLIMETRE -> Range.positiveTo(100_000);
      case ARCMINUTE -> Range.positiveTo(599);
    };
  }
}

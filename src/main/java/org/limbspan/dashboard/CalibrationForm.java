package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.NewCalibration;
import org.limbspan.rig.OnConflict;
import org.limbspan.scale.Calibration;
import org.limbspan.scale.ImageLength;
import org.limbspan.scale.LengthUnit;

/**
 * The form that enters a calibration, as it was filled in; metric or imperial, as the sheet and the
 * tape are.
 *
 * @param lengthUnit one of {@link TypedUnit} for the sheet, and for its uncertainty
 * @param measuredUnit {@code px}, {@code mm} or {@code in}: the last two on a screen
 */
record CalibrationForm(
    @Nullable String takenAt,
    @Nullable String length,
    @Nullable String lengthUncertainty,
    @Nullable String lengthUnit,
    @Nullable String distance,
    @Nullable String distanceUncertainty,
    @Nullable String distanceUnit,
    @Nullable String measured,
    @Nullable String measuredUncertainty,
    @Nullable String measuredUnit,
    @Nullable String note) {

  static final CalibrationForm EMPTY =
      new CalibrationForm(null, "297", "0.2", "mm", null, null, "m", null, null, "px", null);

  private static final int LONGEST_NOTE = 2000;

  /** What is wrong with it, by the name of the field; empty if nothing is. */
  Map<String, String> complaints(RigTime time, Instant now) {
    Map<String, String> complaints = new LinkedHashMap<>();
    taken(complaints, "takenAt", takenAt, time, now);
    target().complain(complaints, "length", "distance");
    pair(complaints, "measured", measured, measuredUncertainty, Double.MIN_VALUE);
    unit(complaints, "measured", measuredUnit);
    if (text(note).length() > LONGEST_NOTE) {
      complaints.put("note", "Expected at most 2000 characters.");
    }
    return complaints;
  }

  /** Complains of a time that is none, that the clock does not tell apart, or has not come. */
  static void taken(
      Map<String, String> complaints,
      String field,
      @Nullable String value,
      RigTime time,
      Instant now) {
    Optional<Instant> at = time.instant(text(value));
    if (at.isEmpty()) {
      complaints.put(
          field,
          "When it was photographed is not understood: expected " + time.field(now) + ", say.");
    } else if (at.get().isAfter(now)) {
      complaints.put(field, "Expected a time that has passed.");
    } else {
      time.doubt(text(value)).ifPresent(words -> complaints.put(field, words));
    }
  }

  /** Complains of a unit of length that is none. */
  static void unit(Map<String, String> complaints, String field, @Nullable String unit) {
    if (TypedUnit.ofSymbol(text(unit)).isEmpty()) {
      complaints.put(field, "Expected one of the units offered.");
    }
  }

  /** Complains of a number and of its uncertainty. */
  static void pair(
      Map<String, String> complaints,
      String field,
      @Nullable String value,
      @Nullable String uncertainty,
      double least) {
    OptionalDouble number = TypedNumber.of(text(value));
    OptionalDouble doubt = TypedNumber.of(text(uncertainty));
    if (!(number.orElse(0) > 0)) {
      complaints.put(field, "Expected a number above 0, such as 297 or 11.5.");
    }
    boolean fits =
        doubt.orElse(-1) >= least && doubt.orElse(-1) < number.orElse(Double.POSITIVE_INFINITY);
    if (!fits) {
      complaints.put(
          field + "Uncertainty",
          "Expected how far off it may be, in the same unit: "
              + (least > 0 ? "above 0" : "0 or more")
              + " and below the value.");
    }
  }

  /** The calibration of a form without complaints. */
  NewCalibration calibration(RigTime time) {
    return new NewCalibration(
        time.instant(text(takenAt)).orElseThrow(),
        new Calibration(
            target().target(), imageLength(measured, measuredUncertainty, measuredUnit)),
        text(note).isEmpty() ? null : text(note),
        OnConflict.REFUSE,
        null);
  }

  private TypedTarget target() {
    return new TypedTarget(
        length, lengthUncertainty, lengthUnit, distance, distanceUncertainty, distanceUnit);
  }

  /** A length in the image of a form without complaints. */
  static ImageLength imageLength(
      @Nullable String value, @Nullable String uncertainty, @Nullable String unit) {
    return text(unit).equals("px")
        ? new ImageLength(number(value), number(uncertainty), LengthUnit.PIXEL)
        : new ImageLength(
            TypedTarget.mm(value, unit), TypedTarget.mm(uncertainty, unit), LengthUnit.MILLIMETRE);
  }

  private static double number(@Nullable String typed) {
    return TypedNumber.of(text(typed)).orElseThrow();
  }
}

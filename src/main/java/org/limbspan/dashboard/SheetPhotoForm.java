package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.limbspan.photo.SheetTarget;

/**
 * The form that sends photographs of the sheet, as it was filled in, without its files.
 *
 * @param sheetTakenAt of photographs whose files tell no time; may be empty
 * @param sheetLength of the tall side
 * @param sheetLengthUnit one of {@link TypedUnit}; of the other side too
 * @param otherSide empty if it is not known
 * @param dryRun {@code true} if the photographs are only measured
 */
record SheetPhotoForm(
    @Nullable String sheetTakenAt,
    @Nullable String sheetLength,
    @Nullable String sheetLengthUncertainty,
    @Nullable String sheetLengthUnit,
    @Nullable String sheetDistance,
    @Nullable String sheetDistanceUncertainty,
    @Nullable String sheetDistanceUnit,
    @Nullable String otherSide,
    @Nullable String dryRun) {

  static final SheetPhotoForm EMPTY =
      new SheetPhotoForm(null, "297", "0.2", "mm", null, null, "m", null, null);

  /** Whether nothing is to be entered. */
  public boolean tried() {
    return text(dryRun).equals("true");
  }

  /**
   * What is wrong with it, by the name of the field; empty if nothing is.
   *
   * @param from the first instant of which the Moon can be computed
   */
  Map<String, String> complaints(RigTime time, Instant from, Instant now) {
    Map<String, String> complaints = new LinkedHashMap<>();
    typedTime().complain(complaints, SheetPhotoComplaints.TAKEN_AT, time, from, now);
    typed().complain(complaints, "sheetLength", "sheetDistance");
    if (!text(otherSide).isEmpty()) {
      other(complaints);
    }
    return complaints;
  }

  TypedPhotoTime typedTime() {
    return new TypedPhotoTime(sheetTakenAt);
  }

  private void other(Map<String, String> complaints) {
    OptionalDouble side = TypedNumber.of(text(otherSide));
    if (!(side.orElse(0) > 0)) {
      complaints.put("otherSide", "Expected a number above 0, such as 210 or 8.5, or nothing.");
    } else if (!complaints.containsKey("sheetLength")
        && !SheetTarget.isTallSide(TypedTarget.mm(sheetLength, sheetLengthUnit), otherSideMm())) {
      complaints.put(
          "otherSide", "Expected less than the tall side, by 2 percent or more, in the same unit.");
    }
  }

  /** The sheet of a form without complaints. */
  SheetTarget target() {
    return new SheetTarget(typed().target(), text(otherSide).isEmpty() ? null : otherSideMm());
  }

  private double otherSideMm() {
    return TypedTarget.mm(otherSide, sheetLengthUnit);
  }

  private TypedTarget typed() {
    return new TypedTarget(
        sheetLength,
        sheetLengthUncertainty,
        sheetLengthUnit,
        sheetDistance,
        sheetDistanceUncertainty,
        sheetDistanceUnit);
  }
}

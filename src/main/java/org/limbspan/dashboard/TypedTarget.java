package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.limbspan.scale.Target;

/**
 * A sheet and its distance as people type them, metric or imperial.
 *
 * @param lengthUnit one of {@link TypedUnit} for the sheet, and for its uncertainty
 * @param distanceUnit likewise
 */
record TypedTarget(
    @Nullable String length,
    @Nullable String lengthUncertainty,
    @Nullable String lengthUnit,
    @Nullable String distance,
    @Nullable String distanceUncertainty,
    @Nullable String distanceUnit) {

  /** Complains of what makes no length or no distance. */
  void complain(Map<String, String> complaints, String lengthField, String distanceField) {
    CalibrationForm.pair(complaints, lengthField, length, lengthUncertainty, 0);
    CalibrationForm.unit(complaints, lengthField, lengthUnit);
    CalibrationForm.pair(complaints, distanceField, distance, distanceUncertainty, 0);
    CalibrationForm.unit(complaints, distanceField, distanceUnit);
  }

  /** The target of a form without complaints. */
  Target target() {
    return new Target(
        mm(length, lengthUnit),
        mm(lengthUncertainty, lengthUnit),
        mm(distance, distanceUnit) / 1000,
        mm(distanceUncertainty, distanceUnit) / 1000);
  }

  /** A length in millimetres, of a form without complaints. */
  static double mm(@Nullable String typed, @Nullable String unit) {
    return TypedUnit.ofSymbol(text(unit))
        .orElseThrow()
        .millimetres(TypedNumber.of(text(typed)).orElseThrow());
  }
}

package org.limbspan.reading;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A reading as clients see it: as entered, then what is derived. */
final class ReadingView {

  private ReadingView() {}

  static Map<String, Object> of(AnnotatedReading annotated) {
    Map<String, Object> fields = new LinkedHashMap<>();
    entered(fields, annotated.reading());
    fields.put("setup", annotated.setup());
    annotated
        .standardised()
        .ifPresent(
            standardised -> {
              fields.put("diameterArcmin", standardised.diameterArcmin());
              fields.put("uncertaintyArcmin", standardised.uncertaintyArcmin());
            });
    fields.put("predicted", annotated.predicted());
    annotated
        .standardised()
        .ifPresent(
            standardised -> {
              fields.put("residualPercent", standardised.residualPercent());
              fields.put("residualUncertaintyPercent", standardised.residualUncertaintyPercent());
            });
    fields.put("remarks", annotated.remarks());
    return fields;
  }

  private static void entered(Map<String, Object> fields, RecordedReading reading) {
    String suffix = reading.diameter().unit().suffix();
    fields.put("id", reading.id());
    fields.put("takenAt", reading.takenAt());
    fields.put("axis", reading.axis().label());
    fields.put("diameter" + suffix, reading.diameter().value());
    fields.put("uncertainty" + suffix, reading.diameter().uncertainty());
    if (!reading.frames().isEmpty()) {
      fields.put("frames" + suffix, reading.frames());
    }
    Circumstances circumstances = reading.circumstances();
    putIfTold(fields, "altitudeDeg", circumstances.altitudeDeg());
    putIfTold(fields, "azimuthDeg", circumstances.azimuthDeg());
    putIfTold(fields, "exposureS", circumstances.exposureS());
    putIfTold(fields, "iso", circumstances.iso());
    putIfTold(fields, "fNumber", circumstances.fNumber());
    putIfTold(fields, "sky", circumstances.sky());
    putIfTold(fields, "note", circumstances.note());
    fields.put("version", reading.version());
    fields.put("enteredAt", reading.enteredAt());
  }

  private static void putIfTold(Map<String, Object> fields, String name, @Nullable Object value) {
    if (value != null) {
      fields.put(name, value);
    }
  }
}

package org.limbspan.rig;

import java.util.LinkedHashMap;
import java.util.Map;
import org.limbspan.scale.ImageLength;
import org.limbspan.scale.StarPair;
import org.limbspan.scale.Target;

/** A calibration as clients see it: as entered, with its plate scale and its setup's number. */
final class CalibrationView {

  private CalibrationView() {}

  static Map<String, Object> entered(Entered<RecordedCalibration> entered) {
    Map<String, Object> fields = of(entered.fact());
    fields.put("outcome", entered.outcome());
    return fields;
  }

  static Map<String, Object> of(RecordedCalibration recorded) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("id", recorded.id());
    fields.put("takenAt", recorded.takenAt());
    fields.put("method", CalibrationMethod.of(recorded.calibration()).label());
    if (recorded.calibration().reference() instanceof Target target) {
      fields.put("targetLengthMm", target.lengthMm());
      fields.put("targetLengthUncertaintyMm", target.lengthUncertaintyMm());
      fields.put("targetDistanceM", target.distanceM());
      fields.put("targetDistanceUncertaintyM", target.distanceUncertaintyM());
    } else if (recorded.calibration().reference() instanceof StarPair pair) {
      fields.put("separationArcmin", pair.separationArcmin());
      fields.put("separationUncertaintyArcmin", pair.separationUncertaintyArcmin());
    }
    ImageLength measured = recorded.calibration().measured();
    fields.put("measured" + measured.unit().suffix(), measured.value());
    fields.put("measuredUncertainty" + measured.unit().suffix(), measured.uncertainty());
    fields.putAll(PlateScaleFields.of(recorded.plateScale()));
    fields.put("setup", recorded.setup());
    if (recorded.note() != null) {
      fields.put("note", recorded.note());
    }
    return fields;
  }
}

package org.limbspan.rig;

import java.util.LinkedHashMap;
import java.util.Map;
import org.limbspan.scale.Calibration;
import org.limbspan.scale.Target;

/** What was photographed to calibrate. */
enum CalibrationMethod {
  TARGET("target"),
  STAR_PAIR("star-pair");

  private final String label;

  CalibrationMethod(String label) {
    this.label = label;
  }

  String label() {
    return label;
  }

  static CalibrationMethod of(Calibration calibration) {
    return calibration.reference() instanceof Target ? TARGET : STAR_PAIR;
  }

  static CalibrationMethod ofLabel(String label) {
    return label.equals(TARGET.label) ? TARGET : STAR_PAIR;
  }

  static Map<String, CalibrationMethod> byLabel() {
    Map<String, CalibrationMethod> byLabel = new LinkedHashMap<>();
    for (CalibrationMethod method : values()) {
      byLabel.put(method.label, method);
    }
    return byLabel;
  }
}

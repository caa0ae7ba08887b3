package org.limbspan.rig;

import java.util.LinkedHashMap;
import java.util.Map;
import org.limbspan.scale.MeanScale;
import org.limbspan.scale.PlateScale;

/** Plate scales as fields of an answer, with the unit in each name. */
final class PlateScaleFields {

  private PlateScaleFields() {}

  static Map<String, Object> of(PlateScale scale) {
    String per = "ArcsecPer" + scale.unit().suffix();
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("plateScale" + per, scale.arcsecPerUnit());
    fields.put("plateScaleUncertainty" + per, scale.uncertainty());
    fields.put("plateScaleIndependentUncertainty" + per, scale.independentUncertainty());
    fields.put("plateScaleCommonUncertainty" + per, scale.commonUncertainty());
    return fields;
  }

  static Map<String, Object> of(MeanScale mean) {
    Map<String, Object> fields = of(mean.scale());
    fields.put("calibrationCount", mean.calibrationCount());
    mean.birgeRatio().ifPresent(ratio -> fields.put("birgeRatio", ratio));
    mean.agreementProbability()
        .ifPresent(probability -> fields.put("agreementProbability", probability));
    return fields;
  }
}

package org.limbspan.photo;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.Entered;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.scale.PlateScale;

/** Calibration photographs as clients see them. */
final class SheetView {

  private SheetView() {}

  static List<Map<String, Object>> of(List<SheetAnswer> answers) {
    return answers.stream().map(SheetView::of).toList();
  }

  private static Map<String, Object> of(SheetAnswer answer) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("file", answer.file());
    putIfTold(fields, "takenAt", answer.takenAt());
    fields.put("outcome", answer.figures() != null ? "measured" : "refused");
    PhotoAnswer.Refusal refused = answer.refused();
    if (refused != null) {
      PhotoView.refusal(fields, refused);
    }
    SheetFigures figures = answer.figures();
    if (figures != null) {
      figures(fields, figures);
    }
    Entered<RecordedCalibration> entered = answer.entered();
    if (entered != null) {
      fields.put("calibrationId", entered.fact().id());
      fields.put("setup", entered.fact().setup());
      fields.put("calibrationOutcome", entered.outcome());
    }
    fields.put("remarks", remarks(answer));
    return fields;
  }

  private static List<String> remarks(SheetAnswer answer) {
    List<String> remarks = new ArrayList<>(answer.remarks());
    SheetFigures figures = answer.figures();
    if (figures != null && figures.shortening().isEmpty()) {
      remarks.add("Give it as otherSideMm.");
    }
    return remarks;
  }

  private static void figures(Map<String, Object> fields, SheetFigures figures) {
    fields.put("measuredPx", figures.tallSidePx());
    fields.put("measuredUncertaintyPx", figures.tallSideUncertaintyPx());
    fields.put("otherSidePx", figures.otherSidePx());
    fields.put("otherSideUncertaintyPx", figures.otherSideUncertaintyPx());
    fields.put("unequalSidesPercent", 100 * figures.unequalSides());
    if (figures.shortening().isPresent()) {
      fields.put("shorteningPercent", 100 * figures.shortening().getAsDouble());
      fields.put("shorteningUncertaintyPercent", 100 * figures.proportionUncertainty());
    }
    fields.put("edgeFwhmPx", figures.edgeFwhmPx());
    PlateScale scale = figures.calibration().plateScale();
    fields.put("plateScaleArcsecPerPx", scale.arcsecPerUnit());
    fields.put("plateScaleUncertaintyArcsecPerPx", scale.uncertainty());
  }

  private static void putIfTold(Map<String, Object> fields, String name, @Nullable Object value) {
    if (value != null) {
      fields.put(name, value);
    }
  }
}

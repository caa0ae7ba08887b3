package org.limbspan.photo;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Axis;

/** Photographs as clients see them. */
final class PhotoView {

  private PhotoView() {}

  static Map<String, Object> of(PhotoAnswer answer) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("file", answer.file());
    putIfTold(fields, "takenAt", answer.takenAt());
    fields.put("outcome", answer.isMeasured() ? "measured" : "refused");
    PhotoAnswer.Refusal refused = answer.refused();
    if (refused != null) {
      refusal(fields, refused);
    }
    PhotoAnswer.Measured measured = answer.measured();
    if (measured != null) {
      figures(fields, measured.axis(), measured.figures());
    }
    PhotoAnswer.Kept kept = answer.kept();
    if (kept != null) {
      fields.put("photoId", kept.photoId());
      fields.put("alreadyHeld", kept.heldBefore());
      putIfTold(fields, "readingId", kept.readingId());
      putIfTold(fields, "use", kept.use() == null ? null : kept.use().label());
    }
    fields.put("remarks", answer.remarks());
    return fields;
  }

  /** A file that gave no diameter. */
  static Map<String, Object> of(RefusedFile refused) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("file", refused.file());
    putIfTold(fields, "takenAt", refused.takenAt());
    refusal(fields, refused.refusal());
    fields.put("refusedAt", refused.refusedAt());
    return fields;
  }

  static void refusal(Map<String, Object> fields, PhotoAnswer.Refusal refused) {
    fields.put("refusal", refused.code());
    fields.put("reason", refused.reason());
    putIfTold(fields, "question", refused.question());
  }

  /**
   * A photograph that is held.
   *
   * @param base address under which its picture and overlay are found
   */
  static Map<String, Object> of(KeptPhoto kept, String base) {
    Photograph photo = kept.photo();
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("id", photo.id());
    fields.put("file", photo.fileName());
    fields.put("sha256", photo.sha256());
    fields.put("takenAt", photo.takenAt());
    fields.put("clock", photo.clock());
    fields.put("widthPx", photo.widthPx());
    fields.put("heightPx", photo.heightPx());
    putIfTold(fields, "focalLengthMm", photo.focalLengthMm());
    putIfTold(fields, "exposureS", photo.exposureS());
    putIfTold(fields, "iso", photo.iso());
    putIfTold(fields, "fNumber", photo.fNumber());
    putIfTold(fields, "camera", photo.camera());
    putIfTold(fields, "readingId", kept.readingId());
    putIfTold(fields, "use", kept.use() == null ? null : kept.use().label());
    kept.newest().ifPresent(newest -> figures(fields, photo.axis(), newest));
    fields.put("measurements", kept.measurements().stream().map(PhotoView::measurement).toList());
    fields.put("originalHeld", kept.isOriginalHeld());
    fields.put("image", base + "/" + photo.id() + "/image");
    fields.put("overlay", base + "/" + photo.id() + "/overlay.svg");
    fields.put("original", base + "/" + photo.id() + "/original");
    fields.put("enteredAt", photo.enteredAt());
    return fields;
  }

  private static Map<String, Object> measurement(MeasuredByMethod measured) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("method", measured.method());
    fields.put("measuredAt", measured.measuredAt());
    fields.put("outcome", measured.figures() == null ? "refused" : "measured");
    putIfTold(fields, "reason", measured.refusedBecause());
    DiscFigures figures = measured.figures();
    if (figures != null) {
      diameters(fields, figures);
    }
    return fields;
  }

  private static void figures(Map<String, Object> fields, Axis axis, DiscFigures figures) {
    fields.put("axis", axis.label());
    fields.put("diameterPx", figures.along(axis).diameterPx());
    fields.put("uncertaintyPx", figures.along(axis).uncertaintyPx());
    diameters(fields, figures);
    fields.put("centreX", figures.centreX());
    fields.put("centreY", figures.centreY());
    fields.put("limbArcDeg", figures.limbArcDeg());
    fields.put("edgeFwhmPx", figures.edgeFwhmPx());
    fields.put("ripplePx", figures.ripplePx());
    fields.put("clippedLimbShare", figures.clippedLimbShare());
    fields.put("illuminatedFraction", figures.illuminatedFraction());
  }

  private static void diameters(Map<String, Object> fields, DiscFigures figures) {
    fields.put("horizontalPx", figures.horizontal().diameterPx());
    fields.put("horizontalUncertaintyPx", figures.horizontal().uncertaintyPx());
    fields.put("verticalPx", figures.vertical().diameterPx());
    fields.put("verticalUncertaintyPx", figures.vertical().uncertaintyPx());
  }

  static List<Map<String, Object>> of(List<PhotoAnswer> answers) {
    List<Map<String, Object>> views = new ArrayList<>();
    answers.forEach(answer -> views.add(of(answer)));
    return views;
  }

  private static void putIfTold(Map<String, Object> fields, String name, @Nullable Object value) {
    if (value != null) {
      fields.put(name, value);
    }
  }
}

package org.limbspan.photo;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.limbspan.intake.Query;
import org.limbspan.intake.Range;
import org.limbspan.platform.InvalidInput;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.scale.Target;
import org.limbspan.sky.Axis;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartHttpServletRequest;

/** Takes photographs of a calibration target. */
@RestController
@RequestMapping("/api/rigs/{slug}/calibrations/photos")
class SheetController {

  private static final Range LENGTH = Range.positiveTo(1e6);
  private static final Range UNCERTAINTY = Range.between(0, 1e6);

  private final Rigs rigs;
  private final Photos photos;

  SheetController(Rigs rigs, Photos photos) {
    this.rigs = rigs;
    this.photos = photos;
  }

  @PostMapping(consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
  List<Map<String, Object>> take(
      @PathVariable String slug,
      @RequestParam Map<String, String> parameters,
      @RequestParam(required = false) @Nullable String takenAt,
      @RequestParam(defaultValue = "false") boolean dryRun,
      @RequestParam(defaultValue = "false") boolean supersede,
      MultipartHttpServletRequest request) {
    Rig rig = rigs.find(slug);
    SheetTarget target = target(parameters);
    PhotoOptions options =
        new PhotoOptions(
            takenAt == null || takenAt.isBlank() ? null : Query.instant("takenAt", takenAt),
            null,
            Axis.VERTICAL,
            dryRun ? PhotoOptions.Purpose.TRY : PhotoOptions.Purpose.KEEP,
            supersede ? OnConflict.SUPERSEDE : OnConflict.REFUSE);
    try (ReceivedPhotos received = photos.receive(request)) {
      return SheetView.of(photos.takeSheets(rig, received.photos(), target, options));
    }
  }

  private static SheetTarget target(Map<String, String> parameters) {
    double lengthMm = number(parameters, "targetLengthMm", LENGTH);
    double lengthUncertaintyMm =
        uncertainty(parameters, "targetLengthUncertaintyMm", "targetLengthMm", lengthMm);
    double distanceM = number(parameters, "targetDistanceM", LENGTH);
    double distanceUncertaintyM =
        uncertainty(parameters, "targetDistanceUncertaintyM", "targetDistanceM", distanceM);
    Target target = new Target(lengthMm, lengthUncertaintyMm, distanceM, distanceUncertaintyM);
    return new SheetTarget(target, otherSideMm(parameters, lengthMm));
  }

  private static @Nullable Double otherSideMm(Map<String, String> parameters, double lengthMm) {
    String text = parameters.get("otherSideMm");
    if (text == null || text.isBlank()) {
      return null;
    }
    double value = Query.number("otherSideMm", text, LENGTH);
    if (!SheetTarget.isTallSide(lengthMm, value)) {
      throw InvalidInput.inQuery(
          "otherSideMm",
          text,
          "less than targetLengthMm, which is the tall side, by 2 percent or more");
    }
    return value;
  }

  private static double number(Map<String, String> parameters, String name, Range range) {
    String text = parameters.get(name);
    if (text == null || text.isBlank()) {
      throw InvalidInput.inQuery(name, null, "a number, as a field of the form or in the address");
    }
    return Query.number(name, text, range);
  }

  private static double uncertainty(
      Map<String, String> parameters, String name, String of, double value) {
    double uncertainty = number(parameters, name, UNCERTAINTY);
    if (uncertainty >= value) {
      throw InvalidInput.inQuery(name, parameters.get(name), "less than " + of);
    }
    return uncertainty;
  }
}

package org.limbspan.photo;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.limbspan.intake.Query;
import org.limbspan.platform.InvalidInput;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Axis;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartHttpServletRequest;

/** Takes photographs. */
@RestController
@RequestMapping("/api/rigs/{slug}/photos")
class PhotoController {

  private final Rigs rigs;
  private final Photos photos;

  PhotoController(Rigs rigs, Photos photos) {
    this.rigs = rigs;
    this.photos = photos;
  }

  @PostMapping(consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
  List<Map<String, Object>> take(
      @PathVariable String slug,
      @RequestParam(required = false) @Nullable String axis,
      @RequestParam(required = false) @Nullable String takenAt,
      @RequestParam(defaultValue = "false") boolean dryRun,
      @RequestParam(defaultValue = "false") boolean supersede,
      MultipartHttpServletRequest request) {
    Rig rig = rigs.find(slug);
    PhotoOptions options =
        new PhotoOptions(
            takenAt == null || takenAt.isBlank() ? null : Query.instant("takenAt", takenAt),
            null,
            axis(axis),
            dryRun ? PhotoOptions.Purpose.TRY : PhotoOptions.Purpose.KEEP,
            supersede ? OnConflict.SUPERSEDE : OnConflict.REFUSE);
    try (ReceivedPhotos received = photos.receive(request)) {
      return PhotoView.of(photos.take(rig, received.photos(), options, PhotoProgress.SILENT));
    }
  }

  private static Axis axis(@Nullable String label) {
    if (label == null || label.isBlank()) {
      return Axis.HORIZONTAL;
    }
    Map<String, Axis> axes =
        Arrays.stream(Axis.values())
            .collect(Collectors.toMap(Axis::label, each -> each, (a, b) -> a, LinkedHashMap::new));
    Axis axis = axes.get(label.strip());
    if (axis == null) {
      throw InvalidInput.inQuery("axis", label, "one of " + String.join(", ", axes.keySet()));
    }
    return axis;
  }
}

package org.limbspan.photo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
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
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.multipart.MultipartHttpServletRequest;

/** Takes photographs. */
@RestController
@RequestMapping("/api/rigs/{slug}/photos")
class PhotoController {

  private static final String FIELD = "photo";

  private final Rigs rigs;
  private final Photos photos;
  private final OriginalFiles originals;

  PhotoController(Rigs rigs, Photos photos, OriginalFiles originals) {
    this.rigs = rigs;
    this.photos = photos;
    this.originals = originals;
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
            axis(axis),
            dryRun ? PhotoOptions.Purpose.TRY : PhotoOptions.Purpose.KEEP,
            supersede ? OnConflict.SUPERSEDE : OnConflict.REFUSE);
    List<MultipartFile> files = request.getFiles(FIELD);
    if (files.isEmpty()) {
      throw InvalidInput.inBody(FIELD, null, "one file or more in parts of that name");
    }
    List<IncomingPhoto> incoming = new ArrayList<>();
    try {
      for (MultipartFile file : files) {
        incoming.add(received(file));
      }
      return PhotoView.of(photos.take(rig, incoming, options, answer -> {}));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      incoming.forEach(photo -> delete(photo.file()));
    }
  }

  private IncomingPhoto received(MultipartFile file) throws IOException {
    Path path = originals.temporary();
    try {
      file.transferTo(path);
    } catch (IOException e) {
      delete(path);
      throw e;
    }
    String name = file.getOriginalFilename();
    return new IncomingPhoto(path, name == null ? "" : name);
  }

  private static void delete(Path path) {
    try {
      Files.deleteIfExists(path);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
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

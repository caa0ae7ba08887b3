package org.limbspan.photo;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.limbspan.intake.Entry;
import org.limbspan.intake.Query;
import org.limbspan.intake.Range;
import org.limbspan.intake.Upload;
import org.limbspan.platform.NotFound;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.core.io.FileSystemResource;
import org.springframework.core.io.Resource;
import org.springframework.http.CacheControl;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** Gives photographs that are held out again, and takes back. */
@RestController
@RequestMapping("/api/rigs/{slug}/photos")
class KeptPhotoController {

  private static final MediaType SVG = new MediaType("image", "svg+xml");
  private static final Range LIMITS = Range.between(1, 500);
  private static final Range SIDES_PX = Range.between(16, 4096);
  private static final Range IDS = Range.between(1, Integer.MAX_VALUE);
  private static final int LONGEST_REASON = 2000;

  private final Rigs rigs;
  private final Photos photos;
  private final PhotoUpkeep upkeep;

  KeptPhotoController(Rigs rigs, Photos photos, PhotoUpkeep upkeep) {
    this.rigs = rigs;
    this.photos = photos;
    this.upkeep = upkeep;
  }

  @GetMapping
  Map<String, Object> list(
      @PathVariable String slug,
      @RequestParam(required = false) @Nullable String readingId,
      @RequestParam(defaultValue = "100") String limit,
      @RequestParam(required = false) @Nullable String before) {
    Rig rig = rigs.find(slug);
    List<KeptPhoto> found =
        readingId != null
            ? photos.ofReading(rig, Query.whole("readingId", readingId, IDS))
            : photos.page(
                rig,
                before == null ? Long.MAX_VALUE : Query.whole("before", before, IDS),
                Query.whole("limit", limit, LIMITS));
    String base = "/api/rigs/" + rig.slug() + "/photos";
    return Map.of("photos", found.stream().map(photo -> PhotoView.of(photo, base)).toList());
  }

  /** Files that gave no diameter, the latest first. */
  @GetMapping("/refused")
  Map<String, Object> refused(
      @PathVariable String slug, @RequestParam(defaultValue = "100") String limit) {
    List<RefusedFile> found =
        photos.refusedSince(rigs.find(slug), Instant.EPOCH, Query.whole("limit", limit, LIMITS));
    return Map.of("refused", found.stream().map(PhotoView::of).toList());
  }

  @GetMapping("/{id}/overlay.svg")
  ResponseEntity<String> overlay(@PathVariable String slug, @PathVariable long id) {
    KeptPhoto kept = photos.find(rigs.find(slug), id);
    DiscFigures figures =
        kept.newest().orElseThrow(() -> new NotFound("measured photograph", "id", id));
    return ResponseEntity.ok()
        .contentType(SVG)
        .eTag("\"" + id + "-" + kept.measurements().get(0).method() + "\"")
        .body(Overlay.svg(kept.photo(), figures));
  }

  @GetMapping("/{id}/image")
  ResponseEntity<byte[]> image(
      @PathVariable String slug,
      @PathVariable long id,
      @RequestParam(defaultValue = "1200") String longestSidePx) {
    Photograph photo = photos.find(rigs.find(slug), id).photo();
    byte[] jpeg = photos.preview(photo, Query.whole("longestSidePx", longestSidePx, SIDES_PX));
    return ResponseEntity.ok()
        .contentType(MediaType.IMAGE_JPEG)
        .cacheControl(CacheControl.maxAge(Duration.ofDays(365)).cachePrivate())
        .body(jpeg);
  }

  @GetMapping("/{id}/original")
  ResponseEntity<Resource> original(@PathVariable String slug, @PathVariable long id) {
    Photograph photo = photos.find(rigs.find(slug), id).photo();
    return ResponseEntity.ok()
        .contentType(MediaType.parseMediaType(photo.format().mediaType()))
        .header(
            HttpHeaders.CONTENT_DISPOSITION,
            ContentDisposition.attachment().filename(photo.fileName()).build().toString())
        .body(new FileSystemResource(photos.original(photo)));
  }

  /** Photographs that an older method measured are measured in the background. */
  @PostMapping("/measure-again")
  @ResponseStatus(HttpStatus.ACCEPTED)
  Map<String, Object> measureAgain(@PathVariable String slug) {
    return Map.of("toMeasure", upkeep.measureAgain(rigs.find(slug)));
  }

  @PostMapping(path = "/{id}/withdraw", consumes = MediaType.APPLICATION_JSON_VALUE)
  @ResponseStatus(HttpStatus.NO_CONTENT)
  void withdraw(@PathVariable String slug, @PathVariable long id, HttpServletRequest request) {
    Rig rig = rigs.find(slug);
    Entry entry = Upload.single(request);
    entry.refuseBeside(Set.of("reason"));
    Optional<String> reason = entry.text("reason", LONGEST_REASON);
    entry.requireSound();
    photos.withdraw(rig, id, reason.orElseThrow());
  }
}

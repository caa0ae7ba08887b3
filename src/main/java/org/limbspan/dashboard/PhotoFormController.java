package org.limbspan.dashboard;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Clock;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.limbspan.photo.Photos;
import org.limbspan.photo.ReceivedPhotos;
import org.limbspan.platform.Problem;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Sky;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartHttpServletRequest;
import org.springframework.web.servlet.ModelAndView;
import tools.jackson.databind.json.JsonMapper;

/**
 * Takes photographs from the ledger page: as a form that is answered by a page, or, for the page's
 * script, line by line while they are measured.
 */
@Controller
@RequestMapping("/rigs/{slug}/photos")
class PhotoFormController {

  private final Rigs rigs;
  private final Photos photos;
  private final PhotoBatches batches;
  private final LedgerPage pages;
  private final JsonMapper mapper;
  private final Sky sky;
  private final Clock clock;

  PhotoFormController(
      Rigs rigs,
      Photos photos,
      PhotoBatches batches,
      LedgerPage pages,
      JsonMapper mapper,
      Sky sky,
      Clock clock) {
    this.rigs = rigs;
    this.photos = photos;
    this.batches = batches;
    this.pages = pages;
    this.mapper = mapper;
    this.sky = sky;
    this.clock = clock;
  }

  /** Answers with what became of each file, or with the form and what is wrong with it. */
  @PostMapping(consumes = MediaType.MULTIPART_FORM_DATA_VALUE, produces = MediaType.TEXT_HTML_VALUE)
  ModelAndView page(
      @PathVariable String slug,
      @RequestParam(required = false) @Nullable String takenAt,
      @RequestParam(defaultValue = "false") boolean dryRun,
      MultipartHttpServletRequest request) {
    Rig rig = rigs.find(slug);
    PhotoForm form = new PhotoForm(takenAt, dryRun);
    Map<String, String> complaints = complaints(rig, form);
    if (!ReceivedPhotos.areIn(request)) {
      complaints.put(PhotoForm.FILES, "Expected one photograph or more.");
    } else if (!complaints.isEmpty()) {
      complaints.put(PhotoForm.FILES, SheetPhotoComplaints.CHOOSE_AGAIN);
    }
    if (!complaints.isEmpty()) {
      return pages.afterRefusing(slug, form, complaints);
    }
    try (ReceivedPhotos received = photos.receive(request)) {
      PhotoBatch batch = batches.take(rig, received.photos(), form, line -> {});
      return new ModelAndView("photos", Map.of("rig", rig, "batch", batch, "tried", dryRun));
    }
  }

  /**
   * Lines of JSON: {@code line} for each file at once, at last {@code batch} or {@code problem}.
   * What is wrong with the form is the only line, {@code complaints} by the name of the field, with
   * status 422.
   */
  @PostMapping(
      consumes = MediaType.MULTIPART_FORM_DATA_VALUE,
      produces = MediaType.APPLICATION_NDJSON_VALUE)
  void lines(
      @PathVariable String slug,
      @RequestParam(required = false) @Nullable String takenAt,
      @RequestParam(defaultValue = "false") boolean dryRun,
      MultipartHttpServletRequest request,
      HttpServletResponse response)
      throws IOException {
    Rig rig = rigs.find(slug);
    PhotoForm form = new PhotoForm(takenAt, dryRun);
    Map<String, String> complaints = complaints(rig, form);
    if (!complaints.isEmpty()) {
      response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
      feed(response).tell("complaints", complaints);
      return;
    }
    try (ReceivedPhotos received = photos.receive(request)) {
      LineFeed feed = feed(response);
      try {
        feed.tell(
            "batch", batches.take(rig, received.photos(), form, line -> feed.tell("line", line)));
      } catch (Problem problem) {
        feed.tell("problem", problem.detail());
      }
    }
  }

  private LineFeed feed(HttpServletResponse response) throws IOException {
    response.setContentType(MediaType.APPLICATION_NDJSON_VALUE);
    return new LineFeed(mapper, response.getOutputStream());
  }

  private Map<String, String> complaints(Rig rig, PhotoForm form) {
    return form.complaints(new RigTime(rig.timeZone()), sky.ephemerisFrom(), clock.instant());
  }
}

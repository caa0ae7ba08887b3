package org.limbspan.dashboard;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Map;
import org.limbspan.photo.PhotoOptions;
import org.limbspan.photo.Photos;
import org.limbspan.photo.ReceivedPhotos;
import org.limbspan.platform.Problem;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Axis;
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
  private final JsonMapper mapper;

  PhotoFormController(Rigs rigs, Photos photos, PhotoBatches batches, JsonMapper mapper) {
    this.rigs = rigs;
    this.photos = photos;
    this.batches = batches;
    this.mapper = mapper;
  }

  @PostMapping(consumes = MediaType.MULTIPART_FORM_DATA_VALUE, produces = MediaType.TEXT_HTML_VALUE)
  ModelAndView page(
      @PathVariable String slug,
      @RequestParam(defaultValue = "false") boolean dryRun,
      MultipartHttpServletRequest request) {
    Rig rig = rigs.find(slug);
    try (ReceivedPhotos received = photos.receive(request)) {
      PhotoBatch batch = batches.take(rig, received.photos(), options(dryRun), line -> {});
      return new ModelAndView("photos", Map.of("rig", rig, "batch", batch, "tried", dryRun));
    }
  }

  /**
   * Lines of JSON: {@code line} for each file at once, at last {@code batch} or {@code problem}.
   */
  @PostMapping(
      consumes = MediaType.MULTIPART_FORM_DATA_VALUE,
      produces = MediaType.APPLICATION_NDJSON_VALUE)
  void lines(
      @PathVariable String slug,
      @RequestParam(defaultValue = "false") boolean dryRun,
      MultipartHttpServletRequest request,
      HttpServletResponse response)
      throws IOException {
    Rig rig = rigs.find(slug);
    try (ReceivedPhotos received = photos.receive(request)) {
      response.setContentType(MediaType.APPLICATION_NDJSON_VALUE);
      LineFeed feed = new LineFeed(mapper, response.getOutputStream());
      try {
        feed.tell(
            "batch",
            batches.take(rig, received.photos(), options(dryRun), line -> feed.tell("line", line)));
      } catch (Problem problem) {
        feed.tell("problem", problem.detail());
      }
    }
  }

  private static PhotoOptions options(boolean dryRun) {
    return new PhotoOptions(
        null,
        null,
        Axis.HORIZONTAL,
        dryRun ? PhotoOptions.Purpose.TRY : PhotoOptions.Purpose.KEEP,
        OnConflict.REFUSE);
  }
}

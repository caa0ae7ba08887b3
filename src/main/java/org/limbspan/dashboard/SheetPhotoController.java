package org.limbspan.dashboard;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.limbspan.photo.IncomingPhoto;
import org.limbspan.photo.PhotoOptions;
import org.limbspan.photo.Photos;
import org.limbspan.photo.ReceivedPhotos;
import org.limbspan.photo.SheetAnswer;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.Problem;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Axis;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.multipart.MultipartHttpServletRequest;
import org.springframework.web.servlet.ModelAndView;

/** Takes photographs of the sheet from the page of the rig. */
@Controller
@RequestMapping("/rigs/{slug}/calibrations/photos")
class SheetPhotoController {

  private static final String FILES = "photo";
  private static final String CHOOSE_AGAIN =
      "Choose the files again: a browser does not keep them in a form that comes back.";

  private final Rigs rigs;
  private final Photos photos;
  private final InstrumentPages pages;

  SheetPhotoController(Rigs rigs, Photos photos, InstrumentPages pages) {
    this.rigs = rigs;
    this.photos = photos;
    this.pages = pages;
  }

  /** Answers with what became of each file, or with the form and what is wrong with it. */
  @PostMapping(consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
  ModelAndView take(
      @PathVariable String slug,
      @ModelAttribute SheetPhotoForm form,
      MultipartHttpServletRequest request) {
    Rig rig = rigs.find(slug);
    Map<String, String> complaints = form.complaints();
    if (!ReceivedPhotos.areIn(request)) {
      complaints.put(FILES, "Expected one photograph or more.");
    } else if (!complaints.isEmpty()) {
      complaints.put(FILES, CHOOSE_AGAIN);
    }
    if (!complaints.isEmpty()) {
      return refused(slug, form, complaints);
    }
    try (ReceivedPhotos received = photos.receive(request)) {
      return measured(rig, received.photos(), form);
    }
  }

  private ModelAndView measured(Rig rig, List<IncomingPhoto> files, SheetPhotoForm form) {
    try {
      List<SheetAnswer> answers = photos.takeSheets(rig, files, form.target(), options(form));
      SheetPhotoWords words = new SheetPhotoWords(new RigTime(rig.timeZone()));
      return new ModelAndView(
          "sheet-photos",
          Map.of(
              "rig", rig,
              "summary", SheetPhotoWords.summary(answers),
              "lines", words.lines(answers),
              "tried", form.tried()));
    } catch (InvalidInput | Conflict refused) {
      return refused(rig.slug(), form, Map.of(FILES, words(files, refused)));
    }
  }

  private ModelAndView refused(String slug, SheetPhotoForm form, Map<String, String> complaints) {
    ModelAndView page = pages.refused(slug, "target", form, complaints);
    page.addObject("targetInHand", true);
    return page;
  }

  /** All or none are entered: which of them stand in the way, and why. */
  private static String words(List<IncomingPhoto> files, Problem refused) {
    String which =
        refused.violations().stream()
            .map(each -> files.get(each.line() == null ? 0 : each.line() - 1).name())
            .distinct()
            .collect(Collectors.joining(", "));
    String why =
        refused instanceof Conflict
            ? "another calibration has the very instant at which it was taken. Take that one back"
                + " first, or leave this photograph out."
            : "expected " + refused.violations().get(0).expected() + ".";
    return which + ": " + why + " " + CHOOSE_AGAIN;
  }

  private static PhotoOptions options(SheetPhotoForm form) {
    return new PhotoOptions(
        null,
        Axis.VERTICAL,
        form.tried() ? PhotoOptions.Purpose.TRY : PhotoOptions.Purpose.KEEP,
        OnConflict.REFUSE);
  }
}

package org.limbspan.dashboard;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.limbspan.photo.IncomingPhoto;
import org.limbspan.photo.PhotoOptions;
import org.limbspan.photo.Photos;
import org.limbspan.photo.ReceivedPhotos;
import org.limbspan.photo.SheetAnswer;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.InvalidInput;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Sky;
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

  private final Rigs rigs;
  private final Photos photos;
  private final InstrumentPages pages;
  private final Sky sky;
  private final Clock clock;

  SheetPhotoController(Rigs rigs, Photos photos, InstrumentPages pages, Sky sky, Clock clock) {
    this.rigs = rigs;
    this.photos = photos;
    this.pages = pages;
    this.sky = sky;
    this.clock = clock;
  }

  /** Answers with what became of each file, or with the form and what is wrong with it. */
  @PostMapping(consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
  ModelAndView take(
      @PathVariable String slug,
      @ModelAttribute SheetPhotoForm form,
      MultipartHttpServletRequest request) {
    Rig rig = rigs.find(slug);
    Map<String, String> complaints =
        form.complaints(new RigTime(rig.timeZone()), sky.ephemerisFrom(), clock.instant());
    if (!ReceivedPhotos.areIn(request)) {
      complaints.put(SheetPhotoComplaints.FILES, "Expected one photograph or more.");
    } else if (!complaints.isEmpty()) {
      complaints.put(SheetPhotoComplaints.FILES, SheetPhotoComplaints.CHOOSE_AGAIN);
    }
    if (!complaints.isEmpty()) {
      return refused(slug, form, complaints);
    }
    try (ReceivedPhotos received = photos.receive(request)) {
      return measured(rig, received.photos(), form);
    }
  }

  private ModelAndView measured(Rig rig, List<IncomingPhoto> files, SheetPhotoForm form) {
    RigTime time = new RigTime(rig.timeZone());
    Optional<Instant> typed = form.typedTime().instant(time);
    try {
      List<SheetAnswer> answers =
          photos.takeSheets(rig, files, form.target(), options(form, typed));
      SheetPhotoWords words = new SheetPhotoWords(time, form.typedTime());
      return new ModelAndView(
          "sheet-photos",
          Map.of(
              "rig", rig,
              "summary", SheetPhotoWords.summary(answers),
              "lines", words.lines(answers),
              "tried", form.tried()));
    } catch (InvalidInput | Conflict refused) {
      return refused(rig.slug(), form, new SheetPhotoComplaints(files, time, typed).of(refused));
    }
  }

  private ModelAndView refused(String slug, SheetPhotoForm form, Map<String, String> complaints) {
    ModelAndView page = pages.refused(slug, "target", form, complaints);
    page.addObject("targetInHand", true);
    return page;
  }

  private static PhotoOptions options(SheetPhotoForm form, Optional<Instant> typed) {
    return new PhotoOptions(
        null,
        typed.orElse(null),
        Axis.VERTICAL,
        form.tried() ? PhotoOptions.Purpose.TRY : PhotoOptions.Purpose.KEEP,
        OnConflict.REFUSE);
  }
}

package org.limbspan.dashboard;

import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.InvalidInput;
import org.limbspan.rig.Entered;
import org.limbspan.rig.NewCalibration;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** The page of the rig itself: its setups, its calibrations, and how to add to them. */
@Controller
@RequestMapping("/rigs/{slug}")
class InstrumentController {

  private final Rigs rigs;
  private final InstrumentPages pages;
  private final Sky sky;
  private final Clock clock;

  InstrumentController(Rigs rigs, InstrumentPages pages, Sky sky, Clock clock) {
    this.rigs = rigs;
    this.pages = pages;
    this.sky = sky;
    this.clock = clock;
  }

  @GetMapping("/rig")
  ModelAndView instrument(
      @PathVariable String slug, @RequestParam(required = false) @Nullable Long entered) {
    return pages.page(slug, Optional.ofNullable(entered));
  }

  @PostMapping("/calibrations")
  ModelAndView calibrate(@PathVariable String slug, @ModelAttribute CalibrationForm form) {
    Rig rig = rigs.find(slug);
    RigTime time = new RigTime(rig.timeZone());
    Map<String, String> complaints = form.complaints(time, clock.instant());
    Optional<ModelAndView> entered =
        complaints.isEmpty()
            ? enter(rig, form.calibration(time), complaints, "takenAt", "measured")
            : Optional.empty();
    return entered.orElseGet(() -> pages.refused(slug, "calibration", form, complaints));
  }

  /** Enters a calibration by two stars, with their separation as the air of the site shows it. */
  @PostMapping("/star-pairs")
  ModelAndView calibrateByStars(@PathVariable String slug, @ModelAttribute StarPairForm form) {
    Rig rig = rigs.find(slug);
    StarPairEntry.Outcome read = StarPairEntry.read(form, rig, sky, clock.instant());
    Map<String, String> complaints = read.complaints();
    return read.calibration()
        .flatMap(fact -> enter(rig, fact, complaints, "starTakenAt", "starMeasured"))
        .orElseGet(
            () -> {
              ModelAndView page = pages.refused(slug, "stars", form, complaints);
              page.addObject("starsInHand", true);
              return page;
            });
  }

  /** Where to go on; empty if it was refused, and then there is a complaint. */
  private Optional<ModelAndView> enter(
      Rig rig,
      NewCalibration fact,
      Map<String, String> complaints,
      String takenField,
      String measuredField) {
    try {
      Entered<RecordedCalibration> entered = rigs.record(rig, List.of(fact)).get(0);
      if (entered.outcome() != Entered.Outcome.HELD_AS_WITHDRAWN) {
        return Optional.of(
            new ModelAndView(
                "redirect:/rigs/%s/rig?entered=%d#calibrations"
                    .formatted(rig.slug(), entered.fact().id())));
      }
      complaints.put(
          takenField, "This very calibration was taken back before. Expected another photograph.");
    } catch (InvalidInput | Conflict refused) {
      complaints.put(measuredField, InstrumentPages.words(refused));
    }
    return Optional.empty();
  }

  @PostMapping("/setups")
  ModelAndView open(@PathVariable String slug, @ModelAttribute SetupForm form) {
    Rig rig = rigs.find(slug);
    RigTime time = new RigTime(rig.timeZone());
    Map<String, String> complaints = new LinkedHashMap<>(form.complaints(time, clock.instant()));
    if (complaints.isEmpty()) {
      try {
        rigs.openSetup(rig, form.setup(time));
        return new ModelAndView("redirect:/rigs/" + slug + "/rig#setups");
      } catch (InvalidInput | Conflict refused) {
        complaints.put("startedAt", InstrumentPages.words(refused));
      }
    }
    return pages.refused(slug, "setup", form, complaints);
  }

  /** Takes a calibration back; it stays in the ledger with the reason. */
  @PostMapping("/calibrations/{id}/withdrawal")
  ModelAndView withdraw(
      @PathVariable String slug,
      @PathVariable long id,
      @RequestParam(defaultValue = "") String why) {
    rigs.withdrawCalibration(rigs.find(slug), id, reason(why));
    return new ModelAndView("redirect:/rigs/" + slug + "/rig#calibrations");
  }

  @PostMapping("/horizon")
  ModelAndView enterHorizon(@PathVariable String slug, @ModelAttribute HorizonForm form) {
    Rig rig = rigs.find(slug);
    Map<String, String> complaints = form.complaints();
    if (complaints.isEmpty()) {
      rigs.enterHorizon(rig, form.line());
      return new ModelAndView("redirect:/rigs/" + slug + "/rig#horizon-line");
    }
    return pages.refused(slug, "horizon", form, complaints);
  }

  /** Takes the horizon back; it stays in the ledger with the reason. */
  @PostMapping("/horizon/withdrawal")
  ModelAndView withdrawHorizon(
      @PathVariable String slug, @RequestParam(defaultValue = "") String why) {
    Rig rig = rigs.find(slug);
    if (rigs.horizon(rig.id()).isPresent()) {
      rigs.withdrawHorizon(rig, reason(why));
    }
    return new ModelAndView("redirect:/rigs/" + slug + "/rig#horizon-line");
  }

  private static String reason(String why) {
    String reason = why.isBlank() ? "taken back on the page of the rig" : why.strip();
    return reason.substring(0, Math.min(2000, reason.length()));
  }
}

package org.limbspan.dashboard;

import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.Problem;
import org.limbspan.rig.RecordedHorizon;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.watch.InferredReadings;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.ModelAndView;

/** The page of the rig itself, for all who answer with it. */
@Component
class InstrumentPages {

  private final LedgerReader ledger;
  private final Rigs rigs;
  private final InferredReadings inferred;
  private final Clock clock;

  InstrumentPages(LedgerReader ledger, Rigs rigs, InferredReadings inferred, Clock clock) {
    this.ledger = ledger;
    this.rigs = rigs;
    this.inferred = inferred;
    this.clock = clock;
  }

  /** With forms that nobody has filled in. */
  ModelAndView page(String slug, Optional<Long> entered) {
    LedgerFacts facts = ledger.read(slug);
    Rig rig = rigs.find(slug);
    InstrumentFacts instrument = InstrumentFacts.of(rig, rigs, inferred);
    Optional<RecordedHorizon> standing = rigs.horizon(rig.id());
    ModelAndView page = new ModelAndView("instrument");
    page.addObject("chapter", ChapterHead.of(facts, Chapter.INSTRUMENT));
    page.addObject("sheet", InstrumentSheets.of(facts, instrument, entered, clock.instant()));
    page.addObject("calibration", CalibrationForm.EMPTY);
    page.addObject("stars", StarPairForm.EMPTY);
    page.addObject("starsInHand", false);
    page.addObject("target", SheetPhotoForm.EMPTY);
    page.addObject("targetInHand", false);
    page.addObject("setup", SetupForm.EMPTY);
    page.addObject("horizonStands", standing.isPresent());
    page.addObject("horizonWords", HorizonForm.words(standing));
    page.addObject("horizon", HorizonForm.of(standing));
    page.addObject("complaints", Map.of());
    return page;
  }

  /**
   * With a form as it was filled in, and what is wrong with it.
   *
   * @param name of the form in the template
   * @param complaints by the name of the field
   */
  ModelAndView refused(String slug, String name, Object form, Map<String, String> complaints) {
    ModelAndView page = page(slug, Optional.empty());
    page.addObject(name, form);
    page.addObject("complaints", complaints);
    page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    return page;
  }

  /** Why an entry was refused, beside the field that it is about. */
  static String words(Problem refused) {
    return refused.violations().stream()
        .findFirst()
        .map(violation -> why(refused) + "Expected " + violation.wordsOfPages() + ".")
        .orElse(refused.detail());
  }

  /** What is wrong with a value is said in the names of a client's fields: the page has its own. */
  private static String why(Problem refused) {
    return refused instanceof InvalidInput ? "" : refused.detail() + " ";
  }
}

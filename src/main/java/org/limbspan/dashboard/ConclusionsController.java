package org.limbspan.dashboard;

import org.limbspan.rig.Rigs;
import org.limbspan.watch.Watch;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** The page of the conclusions. */
@Controller
class ConclusionsController {

  private final LedgerReader ledger;
  private final Rigs rigs;
  private final Watch watch;

  ConclusionsController(LedgerReader ledger, Rigs rigs, Watch watch) {
    this.ledger = ledger;
    this.rigs = rigs;
    this.watch = watch;
  }

  /**
   * @param own whether to tell only what depends on nobody else's tables
   */
  @GetMapping("/rigs/{slug}/conclusions")
  ModelAndView conclusions(
      @PathVariable String slug, @RequestParam(defaultValue = "false") boolean own) {
    ModelAndView page = new ModelAndView("conclusions");
    page.addObject("chapter", ChapterHead.of(ledger.read(slug), Chapter.CONCLUSIONS));
    page.addObject("sheet", ConclusionsSheets.of(watch.conclusions(rigs.find(slug), own)));
    return page;
  }
}

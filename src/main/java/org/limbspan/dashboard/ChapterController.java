package org.limbspan.dashboard;

import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;

/** The pages of one rig below its ledger that are only read. */
@Controller
@RequestMapping("/rigs/{slug}")
class ChapterController {

  private final LedgerPage pages;

  ChapterController(LedgerPage pages) {
    this.pages = pages;
  }

  @GetMapping("/cycle")
  ModelAndView cycle(@PathVariable String slug) {
    return pages.of(slug, Chapter.CYCLE);
  }

  @GetMapping("/nights")
  ModelAndView nights(@PathVariable String slug) {
    return pages.of(slug, Chapter.NIGHTS);
  }

  @GetMapping("/alerts")
  ModelAndView remarks(@PathVariable String slug) {
    return pages.of(slug, Chapter.REMARKS);
  }
}

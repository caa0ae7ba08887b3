package org.limbspan.dashboard;

import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.ModelAndView;

/** The page of a reading with the photographs that it was made of. */
@Controller
class ReadingPageController {

  private final ReadingSheets sheets;

  ReadingPageController(ReadingSheets sheets) {
    this.sheets = sheets;
  }

  @GetMapping("/rigs/{slug}/readings/{id}")
  ModelAndView reading(@PathVariable String slug, @PathVariable long id) {
    return new ModelAndView("reading", "sheet", sheets.of(slug, id));
  }
}

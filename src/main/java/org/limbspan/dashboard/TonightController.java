package org.limbspan.dashboard;

import java.time.Clock;
import org.limbspan.rig.RecordedHorizon;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.ModelAndView;

/** The page to look at before going out. */
@Controller
class TonightController {

  private final Rigs rigs;
  private final TonightReader reader;
  private final Clock clock;

  TonightController(Rigs rigs, TonightReader reader, Clock clock) {
    this.rigs = rigs;
    this.reader = reader;
    this.clock = clock;
  }

  @GetMapping("/rigs/{slug}/tonight")
  ModelAndView tonight(@PathVariable String slug) {
    Rig rig = rigs.find(slug);
    TonightFacts facts =
        reader.read(rig, rigs.horizon(rig.id()).map(RecordedHorizon::line), clock.instant());
    return new ModelAndView("tonight")
        .addObject("sheet", TonightSheets.of(facts))
        .addObject("ways", ChapterHead.ways(slug, Chapter.TONIGHT));
  }
}

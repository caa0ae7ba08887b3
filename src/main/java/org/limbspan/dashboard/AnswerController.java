package org.limbspan.dashboard;

import java.time.Clock;
import java.util.Map;
import java.util.UUID;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.watch.Watch;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** Takes the answer to a remark from the form below it. */
@Controller
class AnswerController {

  private final Rigs rigs;
  private final Watch watch;
  private final LedgerPage page;
  private final Clock clock;

  AnswerController(Rigs rigs, Watch watch, LedgerPage page, Clock clock) {
    this.rigs = rigs;
    this.watch = watch;
    this.page = page;
    this.clock = clock;
  }

  @PostMapping("/rigs/{slug}/alerts/{id}/answer")
  ModelAndView answer(
      @PathVariable String slug, @PathVariable UUID id, @ModelAttribute AnswerForm form) {
    Rig rig = rigs.find(slug);
    RigTime time = new RigTime(rig.timeZone());
    Map<String, String> complaints = form.complaints(time, clock.instant());
    if (!complaints.isEmpty()) {
      return page.afterRefusing(slug, id, form, complaints);
    }
    watch.answer(rig, id, form.answer(time), clock.instant());
    return new ModelAndView("redirect:/rigs/" + slug + "/alerts?answered=" + id + "#answered");
  }
}

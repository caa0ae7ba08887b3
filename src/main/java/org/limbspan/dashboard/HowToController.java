package org.limbspan.dashboard;

import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.ModelAndView;

/** How a thing is done, with own drawings. */
@Controller
class HowToController {

  @GetMapping("/how-to")
  ModelAndView contents() {
    return new ModelAndView("how-to", "pages", HowTo.values());
  }

  @GetMapping("/how-to/{name}")
  ModelAndView page(@PathVariable String name) {
    HowTo page = HowTo.ofPath(name);
    ModelAndView view = new ModelAndView("how-to-" + page.path());
    view.addObject("how", page);
    view.addObject("pages", HowTo.values());
    switch (page) {
      case PROTRACTOR -> view.addObject("ticks", DialTick.altitudes());
      case BEARING_CARD -> view.addObject("ticks", DialTick.bearings());
      case SHOOTING, CALIBRATING, PLOTS -> {
        // drawn by hand
      }
    }
    return view;
  }
}

package org.limbspan.dashboard;

import java.util.List;
import org.limbspan.demo.Demo;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** The first page, the contents, and the ledger of each rig. */
@Controller
class LedgerController {

  private final Rigs rigs;
  private final LedgerReader ledger;
  private final LedgerPage page;
  private final Demo demo;

  LedgerController(Rigs rigs, LedgerReader ledger, LedgerPage page, Demo demo) {
    this.rigs = rigs;
    this.ledger = ledger;
    this.page = page;
    this.demo = demo;
  }

  /** The ledger where there is one rig, the contents where there are several. */
  @GetMapping("/")
  ModelAndView first() {
    List<Rig> all = rigs.all();
    if (all.isEmpty()) {
      return new ModelAndView("first");
    }
    return all.size() == 1 ? page.of(all.get(0).slug()) : contents();
  }

  @GetMapping("/contents")
  ModelAndView contents() {
    List<ContentsLine> lines =
        rigs.all().stream().map(rig -> ContentsLine.of(ledger.read(rig.slug()))).toList();
    return new ModelAndView("contents").addObject("lines", lines);
  }

  @GetMapping("/rigs/{slug}")
  ModelAndView ledger(@PathVariable String slug) {
    return page.of(slug);
  }

  /** Enters the invented rig, but not among rigs that somebody described: it would stay there. */
  @PostMapping("/demo")
  String demo() {
    if (!rigs.all().stream().allMatch(Demo::invented)) {
      return "redirect:/contents";
    }
    return "redirect:/rigs/" + demo.enter().slug();
  }
}

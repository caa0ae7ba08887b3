package org.limbspan.dashboard;

import java.util.List;
import org.limbspan.demo.Demo;
import org.limbspan.demo.TwoGardens;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** The first page, the contents, and the ledger of each rig. */
@Controller
class LedgerController {

  private final Rigs rigs;
  private final ContentsReader contents;
  private final LedgerPage page;
  private final Demo demo;
  private final TwoGardens twoGardens;

  LedgerController(
      Rigs rigs, ContentsReader contents, LedgerPage page, Demo demo, TwoGardens twoGardens) {
    this.rigs = rigs;
    this.contents = contents;
    this.page = page;
    this.demo = demo;
    this.twoGardens = twoGardens;
  }

  /** The ledger where there is one rig, the contents where there are several. */
  @GetMapping("/")
  ModelAndView first() {
    List<Rig> all = rigs.all();
    if (all.isEmpty()) {
      return new ModelAndView("first");
    }
    return all.size() == 1 ? page.of(all.get(0).slug()) : contents(1);
  }

  @GetMapping("/contents")
  ModelAndView contents(@RequestParam(defaultValue = "1") int page) {
    ContentsSheet sheet = contents.read(page);
    return new ModelAndView("contents")
        .addObject("sheet", sheet)
        .addObject("offered", sheet.rigCount() == 1 && onlyInvented());
  }

  @GetMapping("/rigs/{slug}")
  ModelAndView ledger(@PathVariable String slug) {
    return page.of(slug);
  }

  /** Two more, entered while one reads on; not among real rigs either. */
  @PostMapping("/demo/two")
  String twoGardens() {
    if (!onlyInvented()) {
      return "redirect:/contents";
    }
    twoGardens.begin();
    return "redirect:/contents?two";
  }

  /** Enters the invented rig, but not among rigs that somebody described: it would stay there. */
  @PostMapping("/demo")
  String demo() {
    if (!onlyInvented()) {
      return "redirect:/contents";
    }
    return "redirect:/rigs/" + demo.enter().slug();
  }

  private boolean onlyInvented() {
    return rigs.all().stream().allMatch(Demo::invented);
  }
}

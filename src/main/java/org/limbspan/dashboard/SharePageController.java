package org.limbspan.dashboard;

import java.io.IOException;
import java.time.Clock;
import java.util.List;
import org.limbspan.platform.InvalidInput;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.share.Guests;
import org.limbspan.share.Licence;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.ModelAndView;

/** Sharing a rig, and what others shared beside it. */
@Controller
@RequestMapping("/rigs/{slug}/share")
class SharePageController {

  private final LedgerReader ledger;
  private final Rigs rigs;
  private final Guests guests;
  private final Clock clock;

  SharePageController(LedgerReader ledger, Rigs rigs, Guests guests, Clock clock) {
    this.ledger = ledger;
    this.rigs = rigs;
    this.guests = guests;
    this.clock = clock;
  }

  @GetMapping
  ModelAndView page(@PathVariable String slug) {
    Rig rig = rigs.find(slug);
    ModelAndView page = new ModelAndView("share");
    page.addObject("chapter", ChapterHead.of(ledger.read(slug), Chapter.CONCLUSIONS));
    page.addObject("sheet", ShareSheet.of(guests.compare(rig), guests.all()));
    page.addObject("licences", Licence.values());
    page.addObject("refused", List.of());
    return page;
  }

  @PostMapping(consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
  ModelAndView load(@PathVariable String slug, @RequestParam("package") MultipartFile file)
      throws IOException {
    try {
      guests.load(file.getBytes(), clock.instant());
    } catch (InvalidInput refused) {
      ModelAndView page = page(slug);
      page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
      page.addObject("refused", refused.violations());
      return page;
    }
    return new ModelAndView("redirect:/rigs/" + rigs.find(slug).slug() + "/share");
  }

  @PostMapping("/{id}/remove")
  ModelAndView remove(@PathVariable String slug, @PathVariable long id) {
    guests.remove(id);
    return new ModelAndView("redirect:/rigs/" + rigs.find(slug).slug() + "/share");
  }
}

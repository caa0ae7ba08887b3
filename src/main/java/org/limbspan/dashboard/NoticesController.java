package org.limbspan.dashboard;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.limbspan.notice.EnteredRecipient;
import org.limbspan.notice.Notices;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.Problem;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;

/** Who is told about a rig. */
@Controller
@RequestMapping("/rigs/{slug}/notices")
class NoticesController {

  private final LedgerReader ledger;
  private final Rigs rigs;
  private final Notices notices;

  NoticesController(LedgerReader ledger, Rigs rigs, Notices notices) {
    this.ledger = ledger;
    this.rigs = rigs;
    this.notices = notices;
  }

  @GetMapping
  ModelAndView page(@PathVariable String slug) {
    return page(slug, NoticeForm.EMPTY, Map.of());
  }

  /** The page with the secret of a webhook, this once; no browser keeps it. */
  @PostMapping
  ModelAndView enter(
      @PathVariable String slug, @ModelAttribute NoticeForm form, HttpServletResponse response) {
    Rig rig = rigs.find(slug);
    Map<String, String> complaints = new LinkedHashMap<>(form.complaints());
    if (complaints.isEmpty()) {
      try {
        return entered(slug, notices.enter(rig, form.recipient()), response);
      } catch (InvalidInput | Conflict refused) {
        complaints.putAll(words(refused));
      }
    }
    return refused(page(slug, form, complaints));
  }

  private ModelAndView entered(
      String slug, EnteredRecipient entered, HttpServletResponse response) {
    if (entered.secret() == null) {
      return back(slug);
    }
    response.setHeader(HttpHeaders.CACHE_CONTROL, CacheControl.noStore().getHeaderValue());
    ModelAndView page = page(slug);
    page.addObject("secret", entered.secret());
    return page;
  }

  @PostMapping("/{id}")
  ModelAndView change(
      @PathVariable String slug, @PathVariable UUID id, @ModelAttribute NoticeForm form) {
    Rig rig = rigs.find(slug);
    Map<String, String> complaints = form.complaintsOfWishes();
    if (!complaints.isEmpty()) {
      ModelAndView page = page(slug);
      page.addObject("changing", id.toString());
      page.addObject("refused", complaints);
      return refused(page);
    }
    notices.change(rig, id, form.wishes(), false);
    return back(slug);
  }

  @PostMapping("/{id}/pause")
  ModelAndView pause(@PathVariable String slug, @PathVariable UUID id) {
    notices.pause(rigs.find(slug), id, true);
    return back(slug);
  }

  @PostMapping("/{id}/resume")
  ModelAndView resume(@PathVariable String slug, @PathVariable UUID id) {
    notices.pause(rigs.find(slug), id, false);
    return back(slug);
  }

  @PostMapping("/{id}/test")
  ModelAndView test(@PathVariable String slug, @PathVariable UUID id) {
    Rig rig = rigs.find(slug);
    String tested = NoticeSheets.in(new RigTime(rig.timeZone())).tested(notices.test(rig, id));
    ModelAndView page = page(slug);
    page.addObject("tested", Map.of(id.toString(), tested));
    return page;
  }

  @PostMapping("/{id}/remove")
  ModelAndView remove(@PathVariable String slug, @PathVariable UUID id) {
    notices.remove(rigs.find(slug), id);
    return back(slug);
  }

  private static Map<String, String> words(Problem refused) {
    Map<String, String> words = new LinkedHashMap<>();
    refused
        .violations()
        .forEach(each -> words.put(each.field(), "Expected " + each.expected() + "."));
    return words;
  }

  private static ModelAndView refused(ModelAndView page) {
    page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    return page;
  }

  private static ModelAndView back(String slug) {
    return new ModelAndView("redirect:/rigs/" + slug + "/notices");
  }

  private ModelAndView page(String slug, NoticeForm form, Map<String, String> complaints) {
    LedgerFacts facts = ledger.read(slug);
    ModelAndView page = new ModelAndView("notices");
    page.addObject("chapter", ChapterHead.of(facts, Chapter.NOTICES));
    page.addObject(
        "sheet", NoticeSheets.of(notices.of(rigs.find(slug)), notices.offersMail(), facts.time()));
    page.addObject("form", form);
    page.addObject("complaints", complaints);
    page.addObject("changing", "");
    page.addObject("refused", Map.of());
    page.addObject("tested", Map.of());
    return page;
  }
}

package org.limbspan.dashboard;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.Sky;
import org.limbspan.watch.AnswerCause;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/** Lays out the ledger page of a rig. */
@Component
class LedgerPage {

  private static final Duration BACK = Duration.ofDays(16);
  private static final Duration AHEAD = Duration.ofDays(32);

  private final LedgerReader ledger;
  private final RefusedFiles refusedFiles;
  private final Rigs rigs;
  private final Sky sky;
  private final Clock clock;

  LedgerPage(LedgerReader ledger, RefusedFiles refusedFiles, Rigs rigs, Sky sky, Clock clock) {
    this.ledger = ledger;
    this.refusedFiles = refusedFiles;
    this.rigs = rigs;
    this.sky = sky;
    this.clock = clock;
  }

  ModelAndView of(String slug) {
    return of(slug, Chapter.LEDGER);
  }

  /** One of the pages that are made of the ledger's own words. */
  ModelAndView of(String slug, Chapter chapter) {
    ModelAndView page = new ModelAndView(chapter.name().toLowerCase(Locale.ROOT));
    LedgerFacts facts = chapter == Chapter.NIGHTS ? ledger.read(slug) : ledger.readInBrief(slug);
    page.addObject("chapter", ChapterHead.of(facts, chapter));
    if (chapter == Chapter.LEDGER) {
      page.addObject("refusedFiles", refusedFiles.latest(rigs.find(slug)));
    }
    if (chapter == Chapter.NIGHTS) {
      page.addObject("nights", NightsSheets.of(facts, sky));
    }
    LedgerSheet sheet = LedgerSheets.of(facts, apsides(), clock.instant());
    page.addObject("sheet", sheet);
    page.addObject("waiting", sheet.remarks().stream().filter(each -> each.waiting()).toList());
    page.addObject("done", sheet.remarks().stream().filter(each -> !each.waiting()).toList());
    page.addObject("remedies", AnswerForm.REMEDIES);
    page.addObject("answers", AnswerCause.values());
    page.addObject("refused", Map.of());
    page.addObject("answering", "");
    page.addObject("form", AnswerForm.EMPTY);
    page.addObject("photoForm", PhotoForm.EMPTY);
    page.addObject("complaints", Map.of());
    page.addObject("example", facts.time().field(clock.instant()));
    page.addObject(
        "apiAddress",
        ServletUriComponentsBuilder.fromCurrentContextPath()
            .path("/api/rigs/{slug}")
            .buildAndExpand(slug)
            .toUriString());
    return page;
  }

  /** The remarks with an answer that could not be taken, and what is wrong with it. */
  ModelAndView afterRefusing(
      String slug, UUID alertId, AnswerForm form, Map<String, String> complaints) {
    ModelAndView page = of(slug, Chapter.REMARKS);
    page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    page.addObject("answering", alertId.toString());
    page.addObject("form", form);
    page.addObject("refused", complaints);
    return page;
  }

  /** The ledger with a form of photographs that cannot be taken, and what is wrong with it. */
  ModelAndView afterRefusing(String slug, PhotoForm form, Map<String, String> complaints) {
    ModelAndView page = of(slug);
    page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    page.addObject("photoForm", form);
    page.addObject("complaints", complaints);
    return page;
  }

  /** The last apsis and the two that follow; none at the ends of the ephemeris. */
  private List<Apsis> apsides() {
    Instant now = clock.instant();
    Instant from = now.minus(BACK);
    Instant to = now.plus(AHEAD);
    if (from.isBefore(sky.ephemerisFrom()) || to.isAfter(sky.ephemerisTo())) {
      return List.of();
    }
    List<Apsis> told = new ArrayList<>();
    for (Apsis apsis : sky.apsides(from, to)) {
      if (!apsis.at().isAfter(now)) {
        told.clear();
      }
      if (told.size() < 3) {
        told.add(apsis);
      }
    }
    return told;
  }
}

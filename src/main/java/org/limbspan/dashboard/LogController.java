package org.limbspan.dashboard;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.limbspan.demo.Demo;
import org.limbspan.platform.InvalidInput;
import org.limbspan.rig.RecordedHorizon;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseBody;
import org.springframework.web.servlet.ModelAndView;

/** The page on which readings are entered beside the tripod, and what it keeps to work alone. */
@Controller
@RequestMapping("/rigs/{slug}/log")
class LogController {

  private final Rigs rigs;
  private final LedgerReader ledger;
  private final Sky sky;
  private final Clock clock;

  LogController(Rigs rigs, LedgerReader ledger, Sky sky, Clock clock) {
    this.rigs = rigs;
    this.ledger = ledger;
    this.sky = sky;
    this.clock = clock;
  }

  @GetMapping
  ModelAndView log(@PathVariable String slug) {
    Rig rig = rigs.find(slug);
    return new ModelAndView("log")
        .addObject("rig", rig)
        .addObject("ways", ChapterHead.ways(slug, Chapter.LOG))
        .addObject("invented", Demo.invented(rig))
        .addObject("zone", rig.timeZone().getId());
  }

  /**
   * @param at an instant the table has to hold; without it, now
   */
  @GetMapping("/almanac.json")
  @ResponseBody
  LogAlmanac almanac(
      @PathVariable String slug, @RequestParam(required = false) @Nullable Instant at) {
    Rig rig = rigs.find(slug);
    return new LogAlmanacs(
            sky, rigs.history(rig), rigs.horizon(rig.id()).map(RecordedHorizon::line))
        .about(instant(at), ledger.read(slug).observations());
  }

  /** Lets a phone keep the page among its programs (W3C Web Application Manifest). */
  @GetMapping(path = "/manifest.webmanifest", produces = "application/manifest+json")
  @ResponseBody
  Map<String, Object> manifest(@PathVariable String slug) {
    Rig rig = rigs.find(slug);
    String start = "/rigs/" + rig.slug() + "/log";
    return Map.of(
        "id", start,
        "start_url", start,
        "scope", "/",
        "name", "Log, " + rig.name(),
        "short_name", "Log",
        "display", "minimal-ui",
        "background_color", "#000000",
        "theme_color", "#000000",
        "icons", List.of(Map.of("src", "/limb.svg", "sizes", "any", "type", "image/svg+xml")));
  }

  private Instant instant(@Nullable Instant at) {
    Instant instant = at == null ? clock.instant() : at;
    if (instant.isBefore(sky.ephemerisFrom()) || !instant.isBefore(sky.ephemerisTo())) {
      throw InvalidInput.inQuery(
          "at",
          instant,
          "an instant from %s to before %s, the reach of the ephemeris"
              .formatted(sky.ephemerisFrom(), sky.ephemerisTo()));
    }
    return instant;
  }
}

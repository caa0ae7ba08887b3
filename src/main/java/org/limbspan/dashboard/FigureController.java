package org.limbspan.dashboard;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.NotFound;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.Sky;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** The numbers behind the figures of a ledger page. */
@RestController
@RequestMapping(path = "/rigs/{slug}/figure", produces = MediaType.APPLICATION_JSON_VALUE)
class FigureController {

  private final LedgerReader ledger;
  private final OwnCurves ownCurves;
  private final Sky sky;

  FigureController(LedgerReader ledger, OwnCurves ownCurves, Sky sky) {
    this.ledger = ledger;
    this.ownCurves = ownCurves;
    this.sky = sky;
  }

  /**
   * @param from start of the window; without it, the whole ledger
   * @param points how many points the screen can show side by side
   * @param own whether the curve that the readings alone draw is wanted as well
   */
  @GetMapping("/{name}.json")
  Object figure(
      @PathVariable String slug,
      @PathVariable String name,
      @RequestParam(required = false) @Nullable Instant from,
      @RequestParam(required = false) @Nullable Instant to,
      @RequestParam(defaultValue = "1200") int points,
      @RequestParam(defaultValue = "false") boolean own) {
    LedgerFacts facts = name.equals("nights") ? ledger.read(slug) : ledger.readInBrief(slug);
    FigureWindow window =
        FigureWindow.of(facts, Optional.ofNullable(from), Optional.ofNullable(to), points)
            .within(sky.ephemerisFrom(), sky.ephemerisTo());
    List<Apsis> apsides = sky.apsides(window.from(), window.to());
    return switch (name) {
      case "cycle" ->
          CycleFigure.of(facts, window, apsides, sky, own ? ownCurves.of(facts) : Optional.empty());
      case "residuals" -> ResidualsFigure.of(facts, window, apsides);
      case "nights" -> NightsFigure.of(facts, window, apsides, sky);
      default -> throw new NotFound("figure", "name", name);
    };
  }
}

package org.limbspan.dashboard;

import java.util.UUID;
import org.limbspan.platform.NotFound;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Sky;
import org.limbspan.watch.InferredReadings;
import org.limbspan.watch.Watch;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** The figures that are told as a whole: {@link Drawing}. */
@RestController
@RequestMapping(path = "/rigs/{slug}/drawing", produces = MediaType.APPLICATION_JSON_VALUE)
class DrawingController {

  private final LedgerReader ledger;
  private final Rigs rigs;
  private final InferredReadings inferred;
  private final Watch watch;
  private final OwnCurves ownCurves;
  private final Sky sky;

  DrawingController(
      LedgerReader ledger,
      Rigs rigs,
      InferredReadings inferred,
      Watch watch,
      OwnCurves ownCurves,
      Sky sky) {
    this.ledger = ledger;
    this.rigs = rigs;
    this.inferred = inferred;
    this.watch = watch;
    this.ownCurves = ownCurves;
    this.sky = sky;
  }

  /**
   * @param own whether to fold by the readings' own months instead of the computed ones
   */
  @GetMapping("/{name}.json")
  Drawing drawing(
      @PathVariable String slug,
      @PathVariable String name,
      @RequestParam(defaultValue = "false") boolean own) {
    LedgerFacts facts = ledger.read(slug);
    CycleDrawings cycle = new CycleDrawings(facts, sky);
    return switch (name) {
      case "folded" ->
          own ? ownCurves.of(facts).map(cycle::folded).orElseGet(cycle::folded) : cycle.folded();
      case "law" -> cycle.law();
      case "months" -> cycle.months();
      case "scale" -> scale(slug, facts.time());
      default -> throw new NotFound("figure", "name", name);
    };
  }

  private Drawing scale(String slug, RigTime time) {
    InstrumentFacts instrument = InstrumentFacts.of(rigs.find(slug), rigs, inferred);
    return ScaleDrawing.of(instrument).in(time);
  }

  /** What an alert rests on. */
  @GetMapping("/evidence/{id}.json")
  Drawing evidence(@PathVariable String slug, @PathVariable UUID id) {
    Rig rig = rigs.find(slug);
    return EvidenceDrawing.of(ledger.read(slug), () -> rigs.history(rig), watch.alert(rig, id));
  }
}

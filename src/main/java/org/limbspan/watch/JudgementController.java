package org.limbspan.watch;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Cycle, nights, hypotheses and conclusions of a rig. */
@RestController
@RequestMapping("/api/rigs/{slug}")
class JudgementController {

  private final Rigs rigs;
  private final Watch watch;

  JudgementController(Rigs rigs, Watch watch) {
    this.rigs = rigs;
    this.watch = watch;
  }

  @GetMapping("/cycle")
  Answer<CycleResult> cycle(@PathVariable String slug) {
    Judgement judgement = watch.judgement(rigs.find(slug));
    return Answer.of(judgement, judgement.cycle());
  }

  @GetMapping("/nights")
  Answer<NightsResult> nights(@PathVariable String slug) {
    Judgement judgement = watch.judgement(rigs.find(slug));
    return Answer.of(judgement, judgement.nights());
  }

  @GetMapping("/hypotheses")
  Answer<HypothesesResult> hypotheses(@PathVariable String slug) {
    Judgement judgement = watch.judgement(rigs.find(slug));
    return Answer.of(judgement, judgement.hypotheses());
  }

  /**
   * @param selfReliant whether to tell only what depends on nobody else's tables
   */
  @GetMapping("/conclusions")
  Answer<Conclusions> conclusions(
      @PathVariable String slug, @RequestParam(defaultValue = "false") boolean selfReliant) {
    Rig rig = rigs.find(slug);
    return Answer.of(watch.judgement(rig), watch.conclusions(rig, selfReliant));
  }

  /** A part of the judgement beside when it was made and whether it is behind the ledger. */
  record Answer<T>(Instant judgedAt, boolean pending, @JsonUnwrapped T part) {

    static <T> Answer<T> of(Judgement judgement, T part) {
      return new Answer<>(judgement.judgedAt(), judgement.pending(), part);
    }
  }
}

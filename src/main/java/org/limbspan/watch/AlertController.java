package org.limbspan.watch;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.limbspan.intake.Entry;
import org.limbspan.intake.Upload;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Axis;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** Alerts of a rig, and the owner's answers. */
@RestController
@RequestMapping("/api/rigs/{slug}/alerts")
class AlertController {

  private static final Set<String> FIELDS =
      new LinkedHashSet<>(List.of("cause", "note", "changedAt", "withdraw", "relabelAxis"));
  private static final int LONGEST_NOTE = 2000;

  private final Rigs rigs;
  private final Watch watch;
  private final Clock clock;

  AlertController(Rigs rigs, Watch watch, Clock clock) {
    this.rigs = rigs;
    this.watch = watch;
    this.clock = clock;
  }

  @GetMapping
  Alerts alerts(@PathVariable String slug) {
    Rig rig = rigs.find(slug);
    Judgement judgement = watch.judgementInBrief(rig);
    return new Alerts(judgement.judgedAt(), judgement.pending(), watch.alerts(rig));
  }

  @GetMapping("/{id}")
  Alert alert(@PathVariable String slug, @PathVariable UUID id) {
    return watch.alert(rigs.find(slug), id);
  }

  @PostMapping(path = "/{id}/answer", consumes = MediaType.APPLICATION_JSON_VALUE)
  Alert answer(@PathVariable String slug, @PathVariable UUID id, HttpServletRequest request) {
    Rig rig = rigs.find(slug);
    return watch.answer(rig, id, read(Upload.single(request)), clock.instant());
  }

  private NewAnswer read(Entry entry) {
    entry.refuseBeside(FIELDS);
    Optional<AnswerCause> cause = entry.choice("cause", causes());
    Optional<String> note = entry.optionalText("note", LONGEST_NOTE);
    Optional<Instant> changedAt =
        entry.has("changedAt") ? entry.instantUpTo("changedAt", clock.instant()) : Optional.empty();
    Remedy remedy = remedy(entry);
    entry.requireSound();
    return new NewAnswer(cause.orElseThrow(), note.orElse(null), changedAt.orElse(null), remedy);
  }

  private static Remedy remedy(Entry entry) {
    boolean withdraw = entry.flag("withdraw");
    if (!entry.has("relabelAxis")) {
      return withdraw ? new Remedy.Withdraw() : Remedy.NONE;
    }
    if (withdraw) {
      entry.refuse("relabelAxis", "either withdraw or relabelAxis, not both");
    }
    return entry.choice("relabelAxis", axes()).<Remedy>map(Remedy.Relabel::new).orElse(Remedy.NONE);
  }

  private static Map<String, Axis> axes() {
    Map<String, Axis> axes = new LinkedHashMap<>();
    Arrays.stream(Axis.values()).forEach(axis -> axes.put(axis.label(), axis));
    return axes;
  }

  private static Map<String, AnswerCause> causes() {
    Map<String, AnswerCause> causes = new LinkedHashMap<>();
    Arrays.stream(AnswerCause.values()).forEach(cause -> causes.put(cause.label(), cause));
    return causes;
  }

  /** The alerts beside when they were judged and whether that is behind the ledger. */
  record Alerts(Instant judgedAt, boolean pending, List<Alert> alerts) {}
}

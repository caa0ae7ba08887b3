package org.limbspan.rig;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.limbspan.intake.Entry;
import org.limbspan.intake.Upload;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RequestMapping("/api/rigs/{slug}/setups")
class SetupController {

  private static final Set<String> FIELDS =
      new LinkedHashSet<>(List.of("startedAt", "note", "supersedes"));

  private final Rigs rigs;
  private final Clock clock;

  SetupController(Rigs rigs, Clock clock) {
    this.rigs = rigs;
    this.clock = clock;
  }

  @PostMapping(consumes = MediaType.APPLICATION_JSON_VALUE)
  ResponseEntity<SetupView> open(@PathVariable String slug, HttpServletRequest request) {
    Rig rig = rigs.find(slug);
    Entered<Setup> entered = rigs.openSetup(rig, read(Upload.single(request)));
    HttpStatus status =
        entered.outcome() == Entered.Outcome.STORED ? HttpStatus.CREATED : HttpStatus.OK;
    return ResponseEntity.status(status).body(SetupView.entered(entered));
  }

  @GetMapping
  List<SetupView> all(@PathVariable String slug) {
    InstrumentHistory history = rigs.history(rigs.find(slug));
    return history.setups().stream()
        .map(setup -> SetupView.held(setup, history.scaleOf(setup)))
        .toList();
  }

  @PostMapping(path = "/{id}/withdraw", consumes = MediaType.APPLICATION_JSON_VALUE)
  @ResponseStatus(HttpStatus.NO_CONTENT)
  void withdraw(@PathVariable String slug, @PathVariable long id, HttpServletRequest request) {
    Rig rig = rigs.find(slug);
    rigs.withdrawSetup(rig, id, WithdrawalEntry.reason(Upload.single(request)));
  }

  private NewSetup read(Entry entry) {
    entry.refuseBeside(FIELDS);
    Optional<Instant> startedAt = entry.instantUpTo("startedAt", clock.instant());
    Optional<String> note = entry.optionalText("note", 2000);
    boolean supersedes = entry.flag("supersedes");
    entry.requireSound();
    return new NewSetup(
        startedAt.orElseThrow(),
        note.orElse(null),
        supersedes ? OnConflict.SUPERSEDE : OnConflict.REFUSE);
  }
}

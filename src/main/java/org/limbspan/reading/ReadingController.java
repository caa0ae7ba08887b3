package org.limbspan.reading;

import jakarta.servlet.http.HttpServletRequest;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.limbspan.intake.Entry;
import org.limbspan.intake.Upload;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Axis;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** Takes readings, and what is said about them later. */
@RestController
@RequestMapping("/api/rigs/{slug}/readings")
class ReadingController {

  private static final Set<String> RELABEL_FIELDS = new LinkedHashSet<>(List.of("axis", "reason"));
  private static final int LONGEST_REASON = 2000;

  private final Rigs rigs;
  private final Readings readings;
  private final ReadingIntake intake;

  ReadingController(Rigs rigs, Readings readings, ReadingIntake intake) {
    this.rigs = rigs;
    this.readings = readings;
    this.intake = intake;
  }

  @PostMapping(consumes = {MediaType.APPLICATION_JSON_VALUE, Upload.TEXT_CSV})
  IntakeReport record(
      @PathVariable String slug,
      @RequestParam(defaultValue = "false") boolean keepGood,
      @RequestParam(defaultValue = "false") boolean supersede,
      HttpServletRequest request) {
    Rig rig = rigs.find(slug);
    return intake.take(
        rig,
        Upload.of(request, ReadingEntry.REQUIRED_COLUMNS),
        keepGood ? BadLines.KEEP_GOOD : BadLines.REFUSE_BATCH,
        supersede ? OnConflict.SUPERSEDE : OnConflict.REFUSE);
  }

  @PostMapping(path = "/{id}/withdraw", consumes = MediaType.APPLICATION_JSON_VALUE)
  @ResponseStatus(HttpStatus.NO_CONTENT)
  void withdraw(@PathVariable String slug, @PathVariable long id, HttpServletRequest request) {
    Rig rig = rigs.find(slug);
    Entry entry = Upload.single(request);
    entry.refuseBeside(Set.of("reason"));
    Optional<String> reason = entry.text("reason", LONGEST_REASON);
    entry.requireSound();
    readings.withdraw(rig, id, reason.orElseThrow());
  }

  @PostMapping(path = "/{id}/relabel", consumes = MediaType.APPLICATION_JSON_VALUE)
  Map<String, Object> relabel(
      @PathVariable String slug, @PathVariable long id, HttpServletRequest request) {
    Rig rig = rigs.find(slug);
    Entry entry = Upload.single(request);
    entry.refuseBeside(RELABEL_FIELDS);
    Optional<Axis> axis = entry.choice("axis", ReadingEntry.AXES);
    Optional<String> reason = entry.text("reason", LONGEST_REASON);
    entry.requireSound();
    RecordedReading relabelled =
        readings.relabel(rig, id, axis.orElseThrow(), reason.orElseThrow());
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("id", relabelled.id());
    answer.put("takenAt", relabelled.takenAt());
    answer.put("axis", relabelled.axis().label());
    return answer;
  }
}

package org.limbspan.rig;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.limbspan.intake.EntrySource.Shape;
import org.limbspan.intake.Upload;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.Violation;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RequestMapping("/api/rigs/{slug}/calibrations")
class CalibrationController {

  private final Rigs rigs;
  private final Clock clock;

  CalibrationController(Rigs rigs, Clock clock) {
    this.rigs = rigs;
    this.clock = clock;
  }

  @PostMapping(consumes = {MediaType.APPLICATION_JSON_VALUE, Upload.TEXT_CSV})
  ResponseEntity<Object> record(
      @PathVariable String slug,
      @RequestParam(defaultValue = "false") boolean supersede,
      HttpServletRequest request) {
    Rig rig = rigs.find(slug);
    CalibrationEntry reading =
        new CalibrationEntry(clock.instant(), supersede ? OnConflict.SUPERSEDE : OnConflict.REFUSE);
    List<NewCalibration> batch = new ArrayList<>();
    List<Violation> violations = new ArrayList<>();
    Shape shape =
        Upload.of(request, CalibrationEntry.REQUIRED_COLUMNS)
            .forEach(
                entry -> {
                  reading.read(entry).ifPresent(batch::add);
                  violations.addAll(entry.violations());
                });
    if (!violations.isEmpty()) {
      throw InvalidInput.inBody(violations);
    }
    return answer(rigs.record(rig, batch), shape);
  }

  @GetMapping
  List<Map<String, Object>> all(@PathVariable String slug) {
    return rigs.history(rigs.find(slug)).calibrations().stream().map(CalibrationView::of).toList();
  }

  @PostMapping(path = "/{id}/withdraw", consumes = MediaType.APPLICATION_JSON_VALUE)
  @ResponseStatus(HttpStatus.NO_CONTENT)
  void withdraw(@PathVariable String slug, @PathVariable long id, HttpServletRequest request) {
    Rig rig = rigs.find(slug);
    rigs.withdrawCalibration(rig, id, WithdrawalEntry.reason(Upload.single(request)));
  }

  private static ResponseEntity<Object> answer(
      List<Entered<RecordedCalibration>> entered, Shape shape) {
    boolean stored = entered.stream().anyMatch(each -> each.outcome() == Entered.Outcome.STORED);
    List<Map<String, Object>> views = entered.stream().map(CalibrationView::entered).toList();
    return ResponseEntity.status(stored ? HttpStatus.CREATED : HttpStatus.OK)
        .body(shape == Shape.ONE ? views.get(0) : views);
  }
}

package org.limbspan.rig;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.servlet.http.HttpServletRequest;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.limbspan.intake.Upload;
import org.limbspan.sky.HorizonLine.Point;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** A rig's own horizon: hills, roofs and trees around it. */
@RestController
@RequestMapping("/api/rigs/{slug}/horizon")
class HorizonController {

  private final Rigs rigs;

  HorizonController(Rigs rigs) {
    this.rigs = rigs;
  }

  /**
   * @param points by azimuth; none if no horizon stands
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record HorizonView(
      List<Point> points,
      @Nullable Integer version,
      @Nullable Instant enteredAt,
      Entered.@Nullable Outcome outcome) {

    static HorizonView of(Optional<RecordedHorizon> held, Entered.@Nullable Outcome outcome) {
      return new HorizonView(
          held.map(horizon -> horizon.line().points()).orElse(List.of()),
          held.map(RecordedHorizon::version).orElse(null),
          held.map(RecordedHorizon::enteredAt).orElse(null),
          outcome);
    }
  }

  @PutMapping(consumes = {MediaType.APPLICATION_JSON_VALUE, Upload.TEXT_CSV})
  ResponseEntity<HorizonView> enter(@PathVariable String slug, HttpServletRequest request) {
    Rig rig = rigs.find(slug);
    HorizonEntry reading = new HorizonEntry();
    Upload.of(request, HorizonEntry.REQUIRED_COLUMNS).forEach(reading::read);
    Entered<RecordedHorizon> entered = rigs.enterHorizon(rig, reading.line());
    boolean stored = entered.outcome() == Entered.Outcome.STORED;
    return ResponseEntity.status(stored ? HttpStatus.CREATED : HttpStatus.OK)
        .body(HorizonView.of(Optional.of(entered.fact()), entered.outcome()));
  }

  @GetMapping(produces = MediaType.APPLICATION_JSON_VALUE)
  HorizonView standing(@PathVariable String slug) {
    return HorizonView.of(rigs.horizon(rigs.find(slug).id()), null);
  }

  /** The same as lines that can be sent again. */
  @GetMapping(produces = Upload.TEXT_CSV)
  String lines(@PathVariable String slug) {
    return standing(slug).points().stream()
        .map(point -> point.azimuthDeg() + "," + point.altitudeDeg() + "\r\n")
        .collect(Collectors.joining("", "azimuth_deg,altitude_deg\r\n", ""));
  }

  @PostMapping(path = "/withdraw", consumes = MediaType.APPLICATION_JSON_VALUE)
  @ResponseStatus(HttpStatus.NO_CONTENT)
  void withdraw(@PathVariable String slug, HttpServletRequest request) {
    Rig rig = rigs.find(slug);
    rigs.withdrawHorizon(rig, WithdrawalEntry.reason(Upload.single(request)));
  }
}

package org.limbspan.dashboard;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import org.limbspan.rig.RecordedHorizon;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** Gives the chosen windows of the coming 60 days to any calendar. */
@RestController
class PassCalendarController {

  private static final MediaType CALENDAR =
      new MediaType("text", "calendar", StandardCharsets.UTF_8);

  private final Rigs rigs;
  private final TonightReader reader;
  private final Clock clock;

  PassCalendarController(Rigs rigs, TonightReader reader, Clock clock) {
    this.rigs = rigs;
    this.reader = reader;
    this.clock = clock;
  }

  @GetMapping("/api/rigs/{slug}/passes.ics")
  ResponseEntity<byte[]> passes(@PathVariable String slug) throws IOException {
    Rig rig = rigs.find(slug);
    byte[] calendar =
        PassCalendar.of(
            reader.read(rig, rigs.horizon(rig.id()).map(RecordedHorizon::line), clock.instant()));
    return ResponseEntity.ok()
        .contentType(CALENDAR)
        .header(
            HttpHeaders.CONTENT_DISPOSITION,
            ContentDisposition.inline().filename(slug + "-passes.ics").build().toString())
        .body(calendar);
  }
}

package org.limbspan.dashboard;

import org.limbspan.rig.Rigs;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

/** News of a rig to its open pages, as server-sent events (WHATWG HTML, section 9.2). */
@RestController
class LiveController {

  private final Rigs rigs;
  private final LiveReaders readers;

  LiveController(Rigs rigs, LiveReaders readers) {
    this.rigs = rigs;
    this.readers = readers;
  }

  /** Events {@code entered} and {@code judged}; the data of each is a sentence. */
  @GetMapping(path = "/rigs/{slug}/live", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
  ResponseEntity<SseEmitter> live(@PathVariable String slug) {
    return ResponseEntity.ok()
        .cacheControl(CacheControl.noStore())
        .body(readers.join(rigs.find(slug).id()));
  }
}

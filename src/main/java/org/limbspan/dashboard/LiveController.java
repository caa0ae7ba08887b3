package org.limbspan.dashboard;

import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.watch.Watch;
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
  private final Watch watch;
  private final LiveReaders readers;

  LiveController(Rigs rigs, Watch watch, LiveReaders readers) {
    this.rigs = rigs;
    this.watch = watch;
    this.readers = readers;
  }

  /**
   * Events {@code entered} and {@code judged}, the data of each a sentence; before them one {@code
   * stand}.
   */
  @GetMapping(path = "/rigs/{slug}/live", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
  ResponseEntity<SseEmitter> live(@PathVariable String slug) {
    Rig rig = rigs.find(slug);
    SseEmitter reader = readers.join(rig.id());
    readers.greet(
        reader, LiveStand.of(rigs.revision(rig.id()), watch.judgementInBrief(rig).judgedAt()));
    return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(reader);
  }
}

package org.limbspan.notice;

import java.nio.charset.StandardCharsets;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.watch.Watch;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/** Gives the alerts of a rig to any reader of feeds. */
@RestController
class AlertFeedController {

  private static final MediaType ATOM =
      new MediaType("application", "atom+xml", StandardCharsets.UTF_8);

  private final Rigs rigs;
  private final Watch watch;
  private final NoticeProperties properties;

  AlertFeedController(Rigs rigs, Watch watch, NoticeProperties properties) {
    this.rigs = rigs;
    this.watch = watch;
    this.properties = properties;
  }

  @GetMapping("/rigs/{slug}/alerts.atom")
  ResponseEntity<byte[]> feed(@PathVariable String slug) {
    Rig rig = rigs.find(slug);
    String pages =
        properties
            .page("")
            .orElseGet(() -> ServletUriComponentsBuilder.fromCurrentContextPath().toUriString());
    String feed = new AlertFeed(rig, pages).write(watch.alerts(rig));
    return ResponseEntity.ok().contentType(ATOM).body(feed.getBytes(StandardCharsets.UTF_8));
  }
}

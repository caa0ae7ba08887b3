package org.limbspan.rig;

import jakarta.servlet.http.HttpServletRequest;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.limbspan.intake.Entry;
import org.limbspan.intake.Upload;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** Gives and revokes links for guests. */
@RestController
@RequestMapping("/api/rigs/{slug}/guest-links")
class GuestLinkController {

  private static final Set<String> FIELDS = new LinkedHashSet<>(List.of("name"));

  private final Rigs rigs;
  private final GuestLinks links;

  GuestLinkController(Rigs rigs, GuestLinks links) {
    this.rigs = rigs;
    this.links = links;
  }

  @PostMapping(consumes = MediaType.APPLICATION_JSON_VALUE)
  ResponseEntity<Map<String, String>> cut(@PathVariable String slug, HttpServletRequest request) {
    Rig rig = rigs.find(slug);
    Entry entry = Upload.single(request);
    entry.refuseBeside(FIELDS);
    Optional<String> name = entry.text("name", 100);
    entry.requireSound();
    return ResponseEntity.status(HttpStatus.CREATED)
        .cacheControl(CacheControl.noStore())
        .body(
            Map.of(
                "name",
                name.orElseThrow(),
                "path",
                "/guest/" + links.cut(rig, name.orElseThrow())));
  }

  @GetMapping
  List<RigKey> all(@PathVariable String slug) {
    return links.of(rigs.find(slug));
  }

  @DeleteMapping("/{id}")
  @ResponseStatus(HttpStatus.NO_CONTENT)
  void revoke(@PathVariable String slug, @PathVariable long id) {
    links.revoke(rigs.find(slug), id);
  }
}

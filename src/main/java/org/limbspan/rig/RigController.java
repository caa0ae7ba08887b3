package org.limbspan.rig;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.util.List;
import org.limbspan.intake.Upload;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RequestMapping("/api/rigs")
class RigController {

  private final Rigs rigs;

  RigController(Rigs rigs) {
    this.rigs = rigs;
  }

  @PostMapping(consumes = MediaType.APPLICATION_JSON_VALUE)
  ResponseEntity<RigView> describe(HttpServletRequest request) {
    Rig rig = rigs.describe(RigEntry.read(Upload.single(request)));
    return ResponseEntity.created(URI.create("/api/rigs/" + rig.slug())).body(RigView.of(rig));
  }

  @GetMapping
  List<RigView> all() {
    return rigs.all().stream().map(RigView::of).toList();
  }

  @GetMapping("/{slug}")
  RigView one(@PathVariable String slug) {
    return RigView.of(rigs.find(slug));
  }
}

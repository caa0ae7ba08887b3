package org.limbspan.archive;

import java.util.List;
import java.util.Map;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.Violation;
import org.limbspan.platform.jobs.Jobs;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** Copies every changed ledger now, as before an upgrade. */
@RestController
class CopyController {

  private final CopyProperties properties;
  private final Jobs jobs;

  CopyController(CopyProperties properties, Jobs jobs) {
    this.properties = properties;
    this.jobs = jobs;
  }

  @PostMapping("/api/copies")
  @ResponseStatus(HttpStatus.ACCEPTED)
  Map<String, Object> make() {
    if (!properties.enabled()) {
      throw new Conflict(
          "The service makes no copies: they are switched off.",
          List.of(new Violation("limbspan.copies.enabled", "false", "true")));
    }
    return Map.of("begun", jobs.runSoon(CopyConfiguration.JOB));
  }
}

package org.limbspan.archive;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.limbspan.platform.HealthWarning;
import org.limbspan.platform.jobs.JobState;
import org.limbspan.platform.jobs.Jobs;
import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;

/** When each rig's ledger was last copied; a warning if the last try failed, here or elsewhere. */
@Component("ledgerCopy")
class LedgerCopyHealth implements HealthIndicator {

  private final LedgerCopies copies;
  private final CopyProperties properties;
  private final Jobs jobs;

  LedgerCopyHealth(LedgerCopies copies, CopyProperties properties, Jobs jobs) {
    this.copies = copies;
    this.properties = properties;
    this.jobs = jobs;
  }

  @Override
  public Health health() {
    if (!properties.enabled()) {
      return Health.up().withDetail("enabled", false).build();
    }
    Optional<JobState> job = jobs.state(CopyConfiguration.JOB);
    Map<String, String> troubles = copies.troubles();
    boolean well = troubles.isEmpty() && job.map(JobState::failures).orElse(0) == 0;
    Health.Builder health = well ? Health.up() : Health.status(HealthWarning.STATUS);
    job.ifPresent(state -> health.withDetail("next", state.due()));
    job.map(JobState::lastFailed)
        .filter(at -> !well)
        .ifPresent(at -> health.withDetail("lastFailed", at));
    if (!troubles.isEmpty()) {
      health.withDetail("notCopied", troubles);
    }
    return health
        .withDetail("directory", copies.folder().toString())
        .withDetail("newest", newest())
        .build();
  }

  private Map<String, Object> newest() {
    Map<String, Object> newest = new LinkedHashMap<>();
    try {
      copies
          .newest()
          .forEach((slug, at) -> newest.put(slug, at.isPresent() ? at.get() : "none yet"));
    } catch (IOException e) {
      newest.put("unreadable", String.valueOf(e.getMessage()));
    }
    return newest;
  }
}

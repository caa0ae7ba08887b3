package org.limbspan.reading;

import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;

/** When each rig was last read. For whoever looks: no weather is a fault of the service. */
@Component("latestReading")
class LatestReadingHealth implements HealthIndicator {

  private final LatestReadings latest;

  LatestReadingHealth(LatestReadings latest) {
    this.latest = latest;
  }

  @Override
  public Health health() {
    Health.Builder health = Health.up();
    latest
        .bySlug()
        .forEach((slug, at) -> health.withDetail(slug, at.isPresent() ? at.get() : "none yet"));
    return health.build();
  }
}

package org.limbspan.platform;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.limbspan.sky.Sky;
import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;

/** How long the table of the Moon still reaches; a warning in its last year. */
@Component("ephemeris")
class EphemerisHealth implements HealthIndicator {

  private static final long WARNING_DAYS = 366;

  private final Sky sky;
  private final Clock clock;

  EphemerisHealth(Sky sky, Clock clock) {
    this.sky = sky;
    this.clock = clock;
  }

  @Override
  public Health health() {
    Instant end = sky.ephemerisTo();
    long days = Duration.between(clock.instant(), end).toDays();
    return (days >= WARNING_DAYS ? Health.up() : Health.status(HealthWarning.STATUS))
        .withDetail("reachesTo", end)
        .withDetail("daysLeft", days)
        .build();
  }
}

package org.limbspan.platform;

import java.io.IOException;
import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;

/**
 * Room on the disk of the home; a warning when it does for the photographs of a few nights only.
 */
@Component("homeDisk")
class HomeDiskHealth implements HealthIndicator {

  private static final long WARNING_BYTES = 1L << 30;

  private final HomeDirectory home;

  HomeDiskHealth(HomeDirectory home) {
    this.home = home;
  }

  @Override
  public Health health() {
    try {
      long free = home.freeBytes();
      return (free >= WARNING_BYTES ? Health.up() : Health.status(HealthWarning.STATUS))
          .withDetail("freeBytes", free)
          .withDetail("warnsBelowBytes", WARNING_BYTES)
          .build();
    } catch (IOException e) {
      return Health.down(e).build();
    }
  }
}

package org.limbspan.platform.reads;

import java.util.Locale;
import org.limbspan.platform.HealthWarning;
import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;

/** Warns while the standby is not read: pages go on, from the primary. */
final class StandbyHealth implements HealthIndicator {

  private final Standby standby;

  StandbyHealth(Standby standby) {
    this.standby = standby;
  }

  @Override
  public Health health() {
    StandbyStand stand = standby.stand();
    boolean well = stand.use() == StandbyStand.Use.READ;
    Health.Builder health =
        (well ? Health.up() : Health.status(HealthWarning.STATUS))
            .withDetail("address", standby.address())
            .withDetail("use", stand.use().name().toLowerCase(Locale.ROOT))
            .withDetail("since", stand.since());
    return (well ? health : health.withDetail("why", stand.why())).build();
  }
}

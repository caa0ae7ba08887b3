package org.limbspan.notice;

import org.limbspan.platform.HealthWarning;
import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;

/** Warns while a recipient cannot be reached: restarting the service helps nobody. */
@Component("noticeRecipients")
class NoticeHealth implements HealthIndicator {

  private final NoticeStands stands;

  NoticeHealth(NoticeStands stands) {
    this.stands = stands;
  }

  @Override
  public Health health() {
    long failing = stands.failingRecipients();
    return (failing == 0 ? Health.up() : Health.status(HealthWarning.STATUS))
        .withDetail("failingRecipients", failing)
        .build();
  }
}

package org.limbspan.platform;

import org.springframework.boot.health.contributor.Status;

/** Between up and down: the service does all it should, and its owner should do something. */
public final class HealthWarning {

  public static final Status STATUS = new Status("WARNING");

  private HealthWarning() {}
}

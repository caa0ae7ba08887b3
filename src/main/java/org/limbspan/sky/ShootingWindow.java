package org.limbspan.sky;

import java.time.Instant;

/**
 * Minutes of a pass that suit a reading, {@code [from, to)}.
 *
 * @param best the Moon at the instant to aim for, within the window
 */
public record ShootingWindow(Place place, Instant from, Instant to, MoonSight best) {

  /** Where in its pass the Moon stands. */
  public enum Place {
    LOW_RISING,
    HIGH,
    LOW_SETTING;

    public boolean isLow() {
      return this != HIGH;
    }
  }

  public ShootingWindow {
    if (!from.isBefore(to) || best.at().isBefore(from) || best.at().isAfter(to)) {
      throw new IllegalArgumentException(
          "window %s to %s: expected from before to, and %s between them"
              .formatted(from, to, best.at()));
    }
  }

  /** The light in which the best instant lies. */
  public SkyLight light() {
    return SkyLight.of(best.sunAltitudeDeg());
  }
}

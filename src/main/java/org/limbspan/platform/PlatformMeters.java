package org.limbspan.platform;

import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.binder.MeterBinder;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Component;

/** What runs out: the disk of the home, and the table of the Moon. */
@Component
class PlatformMeters implements MeterBinder {

  private static final double SECONDS_A_DAY = 86_400;

  private final HomeDirectory home;
  private final Sky sky;
  private final Clock clock;

  PlatformMeters(HomeDirectory home, Sky sky, Clock clock) {
    this.home = home;
    this.sky = sky;
    this.clock = clock;
  }

  @Override
  public void bindTo(MeterRegistry registry) {
    Gauge.builder("limbspan.home.disk.free.bytes", this, PlatformMeters::freeBytes)
        .description("Room left on the disk of the home")
        .register(registry);
    Gauge.builder("limbspan.ephemeris.left.days", this, PlatformMeters::ephemerisDays)
        .description("Days until the table of the Moon ends")
        .register(registry);
  }

  /** Not a number where the disk cannot be asked. */
  private double freeBytes() {
    try {
      return home.freeBytes();
    } catch (IOException e) {
      return Double.NaN;
    }
  }

  private double ephemerisDays() {
    return Duration.between(clock.instant(), sky.ephemerisTo()).toSeconds() / SECONDS_A_DAY;
  }
}

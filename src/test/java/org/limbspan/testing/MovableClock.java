package org.limbspan.testing;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;

/** A clock that goes on by itself and can be moved. */
public final class MovableClock extends Clock {

  private volatile Duration ahead = Duration.ZERO;

  /** Puts it in the place of the service's clock. */
  @TestConfiguration(proxyBeanMethods = false)
  public static class Setting {

    @Bean
    @Primary
    MovableClock movableClock() {
      return new MovableClock();
    }
  }

  public void moveTo(Instant instant) {
    ahead = Duration.between(Instant.now(), instant);
  }

  public void advance(Duration by) {
    ahead = ahead.plus(by);
  }

  public void backToNow() {
    ahead = Duration.ZERO;
  }

  @Override
  public Instant instant() {
    return Instant.now().plus(ahead);
  }

  @Override
  public ZoneId getZone() {
    return ZoneOffset.UTC;
  }

  @Override
  public Clock withZone(ZoneId zone) {
    throw new UnsupportedOperationException("the service asks this clock for instants only");
  }
}

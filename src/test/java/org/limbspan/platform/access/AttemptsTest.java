package org.limbspan.platform.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

class AttemptsTest {

  private Instant now = Instant.parse("2031-03-01T22:00:00Z");

  private final Attempts attempts =
      new Attempts(
          new Clock() {
            @Override
            public ZoneId getZone() {
              return ZoneOffset.UTC;
            }

            @Override
            public Clock withZone(ZoneId zone) {
              return this;
            }

            @Override
            public Instant instant() {
              return now;
            }
          });

  private void fail(String address, int times) {
    for (int i = 0; i < times; i++) {
      attempts.failed(address);
    }
  }

  @Test
  void waitsAfterTenFailuresUntilTheMinuteIsOver() {
    fail("192.0.2.1", 9);
    assertThat(attempts.mustWait("192.0.2.1")).isFalse();
    fail("192.0.2.1", 1);
    assertThat(attempts.mustWait("192.0.2.1")).isTrue();
    now = now.plusSeconds(59);
    assertThat(attempts.mustWait("192.0.2.1")).isTrue();
    now = now.plusSeconds(1);
    assertThat(attempts.mustWait("192.0.2.1")).isFalse();
  }

  @Test
  void countsEachAddressByItself() {
    fail("192.0.2.1", 10);
    assertThat(attempts.mustWait("192.0.2.2")).isFalse();
  }

  @Test
  void doesNotLockOutForGoodWhenTheClockIsSetBack() {
    fail("192.0.2.1", 10);
    now = now.minus(Duration.ofDays(400));
    assertThat(attempts.mustWait("192.0.2.1")).isFalse();
  }

  @Test
  void forgetsTheOldestOfThousands() {
    fail("192.0.2.1", 10);
    for (int i = 0; i < 1000; i++) {
      attempts.failed("2001:db8::" + Integer.toHexString(i));
    }
    assertThat(attempts.mustWait("192.0.2.1")).isFalse();
  }
}

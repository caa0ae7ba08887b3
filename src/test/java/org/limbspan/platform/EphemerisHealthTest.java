package org.limbspan.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.Sky;
import org.limbspan.sky.SkyFixture;
import org.springframework.boot.health.contributor.Health;

class EphemerisHealthTest {

  private static final Sky SKY = SkyFixture.sky();

  @Test
  void isWellAsLongAsTheTableReachesAYearAhead() {
    Health health = before(Duration.ofDays(400));
    assertThat(health.getStatus().getCode()).isEqualTo("UP");
    assertThat(health.getDetails()).containsEntry("daysLeft", 400L);
  }

  @Test
  void warnsInTheLastYearAndAfterTheEnd() {
    assertThat(before(Duration.ofDays(300)).getStatus().getCode()).isEqualTo("WARNING");
    assertThat(before(Duration.ofDays(-10)).getStatus().getCode()).isEqualTo("WARNING");
  }

  private static Health before(Duration end) {
    Instant now = SKY.ephemerisTo().minus(end);
    return new EphemerisHealth(SKY, Clock.fixed(now, ZoneOffset.UTC)).health();
  }
}

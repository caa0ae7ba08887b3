package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.limbspan.sky.SkyFixture;

class PassNumberTest {

  private static final Sky SKY = SkyFixture.sky();
  private static final Site WELLINGTON = new Site(-41.2866, 174.7756, 30);
  private static final Site DATE_LINE_WEST = new Site(52, -179.9, 0);

  @Test
  void stepsByOneAtEachLowerTransitForTwentyYears() {
    for (Site site : new Site[] {WELLINGTON, DATE_LINE_WEST}) {
      Instant at = Instant.parse("1985-01-01T00:00:00Z");
      MoonSight before = SKY.moonAt(at, site);
      int turns = 0;
      while (at.isBefore(Instant.parse("2005-01-01T00:00:00Z"))) {
        at = at.plus(Duration.ofHours(5));
        MoonSight now = SKY.moonAt(at, site);
        boolean turned = PassNumber.hourAngleDeg(now, site) < PassNumber.hourAngleDeg(before, site);
        assertThat(PassNumber.of(now, site) - PassNumber.of(before, site))
            .as("at %s", at)
            .isEqualTo(turned ? 1 : 0);
        turns += turned ? 1 : 0;
        before = now;
      }
      // 20 years of lunar days of 24 h 50.47 min
      assertThat(turns).isBetween(7_057, 7_059);
    }
  }

  @Test
  void findsTheTransitWithinAQuarterOfAnHour() {
    Instant start = Instant.parse("2024-03-01T00:00:00Z");
    for (int hour = 0; hour < 24 * 60; hour++) {
      MoonSight sight = SKY.moonAt(start.plus(Duration.ofHours(hour)), WELLINGTON);
      Instant transit = PassNumber.transitNear(sight, WELLINGTON);
      double degrees = PassNumber.hourAngleDeg(SKY.moonAt(transit, WELLINGTON), WELLINGTON);
      assertThat(Math.abs(degrees)).as("hour %d", hour).isLessThan(15 / 60.0 * 14.5);
    }
  }
}

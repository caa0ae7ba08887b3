package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SizeSpanPropertyTest {

  private static final Sky SKY = SkyFixture.sky();
  private static final Instant START = Instant.parse("2024-01-01T00:00:00Z");

  private final SplittableRandom random = new SplittableRandom(20240101);

  @Test
  void holdsEverySizeSeenAboveTheHorizon() {
    for (int i = 0; i < 500; i++) {
      Site site = new Site(random.nextDouble(-89, 89), random.nextDouble(-180, 180), 100);
      MoonSight sight = SKY.moonAt(START.plus(Duration.ofMinutes(random.nextInt(2_000_000))), site);
      if (sight.altitudeDeg() >= 0) {
        SizeSpan span = SizeSpan.of(sight, site);
        assertThat(sight.horizontalDiameterArcmin())
            .isBetween(span.onHorizonArcmin() - 0.002, span.atTransitArcmin() + 1e-9);
      }
    }
  }

  @Test
  void isReachedWhereTheSublunarPointCrossesTheMeridianOfTheSite() {
    for (int i = 0; i < 200; i++) {
      Instant at = START.plus(Duration.ofMinutes(random.nextInt(2_000_000)));
      MoonSight below = SKY.moonAt(at, new Site(0, 0, 0));
      Site site = new Site(random.nextDouble(-60, 60), below.sublunarLongitudeDeg(), 0);
      assertThat(SizeSpan.of(below, site).atTransitArcmin())
          .isCloseTo(SKY.moonAt(at, site).horizontalDiameterArcmin(), within(1e-6));
    }
  }
}

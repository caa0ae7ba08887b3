package org.limbspan.drift;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.Sighted;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.limbspan.sky.SkyFixture;

class ClockFitTest {

  private static final Site SITE = new Site(48, 11, 500);
  private static final Instant TRULY = Instant.parse("2024-03-20T19:00:00Z");

  private final Sky sky = SkyFixture.sky();
  private final ClockFit fit = new ClockFit(sky, SITE);

  private Observation sighted(Instant logged, boolean well) {
    MoonSight truth = sky.moonAt(TRULY, SITE);
    Sighted sighted =
        well
            ? new Sighted(
                OptionalDouble.of(truth.apparentAltitudeDeg()),
                OptionalDouble.of(truth.azimuthDeg()))
            : Sighted.NONE;
    return new Observation(
        logged, Axis.HORIZONTAL, 31, 0.001, sky.moonAt(logged, SITE), 0, sighted);
  }

  @Test
  void findsByHowMuchTheClockIsAhead() {
    for (int minutes : new int[] {200, -75, 600}) {
      Optional<Duration> ahead = fit.ahead(sighted(TRULY.plus(Duration.ofMinutes(minutes)), true));
      assertThat(ahead.orElseThrow().toMinutes()).isBetween(minutes - 2L, minutes + 2L);
    }
  }

  @Test
  void findsNothingWhereTheClockIsRightOrNothingWasSighted() {
    assertThat(fit.ahead(sighted(TRULY, true))).isEmpty();
    assertThat(fit.ahead(sighted(TRULY.plus(Duration.ofHours(3)), false))).isEmpty();
  }

  @Test
  void keepsWithinTheEphemeris() {
    Instant edge = sky.ephemerisFrom();
    Observation reading =
        new Observation(
            edge,
            Axis.HORIZONTAL,
            31,
            0.001,
            sky.moonAt(edge, SITE),
            0,
            new Sighted(OptionalDouble.of(80), OptionalDouble.empty()));
    assertThat(fit.ahead(reading)).isEmpty();
  }
}

package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.random.RandomDataGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

/**
 * Two invented rigs on two continents that photograph the Moon within minutes of each other. Held
 * against the Moon's mean distance over the pairs, 60.3 equatorial radii on average (384,400 km
 * over 6378.137 km; JPL DE405 for the instants).
 */
class TwoSiteEstimatorReferenceTest {

  private static final Site NORTH = new Site(52.1, 5.2, 5);
  private static final Site SOUTH = new Site(-33.9, 18.5, 40);
  private static final double READING_SD = 0.0009;
  private static final Duration WITHIN = Duration.ofMinutes(10);

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void twoRigsGiveTheDistanceBetterThanTenPercent(long seed) {
    Rigs rigs = new Rigs(seed, 60);
    TwoSiteDistance found = rigs.estimate(WITHIN);
    Estimate parallax = found.distance().parallax();
    assertThat(found.pairCount()).isEqualTo(rigs.north.size());
    assertThat(Math.abs(parallax.sigmasFrom(rigs.meanParallax()))).isLessThan(3);
    assertThat(parallax.uncertainty() / parallax.value()).isLessThan(0.1);
    Estimate distance = found.distance().earthRadii().orElseThrow();
    assertThat(Math.abs(distance.value() * rigs.meanParallax() - 1)).isLessThan(0.1);
  }

  /** Scales that are wrong by a percent, one of them, change nothing: their ratio is free. */
  @Test
  void needsNoCalibration() {
    Rigs rigs = new Rigs(7, 60);
    Estimate right = rigs.estimate(WITHIN).distance().parallax();
    rigs.south.replaceAll(
        o ->
            new Observation(
                o.takenAt(),
                o.axis(),
                o.observedArcmin() * 1.01,
                o.relativeUncertainty(),
                o.sight(),
                o.setup(),
                o.sighted()));
    Estimate wrong = rigs.estimate(WITHIN).distance().parallax();
    assertThat(wrong.value())
        .isCloseTo(
            right.value(), org.assertj.core.api.Assertions.within(0.02 * right.uncertainty()));
  }

  @Test
  void saysNothingWithoutSimultaneousReadings() {
    Rigs rigs = new Rigs(3, 10);
    assertThat(
            TwoSiteEstimator.estimate(
                rigs.north, NORTH, List.of(), SOUTH, AltitudeSource.COMPUTED, WITHIN))
        .isEmpty();
    assertThat(
            TwoSiteEstimator.estimate(
                rigs.north, NORTH, rigs.south, SOUTH, AltitudeSource.SIGHTED, WITHIN))
        .isEmpty();
  }

  /** Readings of both, each within 8 minutes of the other. */
  private static final class Rigs {

    private final RandomDataGenerator random;
    private final List<Observation> north = new ArrayList<>();
    private final List<Observation> south = new ArrayList<>();

    Rigs(long seed, int count) {
      random = new RandomDataGenerator(seed);
      Instant start = Instant.parse("2024-02-01T00:00:00Z");
      while (north.size() < count) {
        Instant at = start.plus(Duration.ofMinutes(random.nextLong(0, 400 * 1440L)));
        MoonSight one = SkyFixture.sky().moonAt(at, NORTH);
        MoonSight two = SkyFixture.sky().moonAt(at.plusSeconds(random.nextLong(-480, 480)), SOUTH);
        if (one.altitudeDeg() > 8 && two.altitudeDeg() > 8) {
          north.add(reading(one));
          south.add(reading(two));
        }
      }
    }

    TwoSiteDistance estimate(Duration within) {
      return TwoSiteEstimator.estimate(north, NORTH, south, SOUTH, AltitudeSource.COMPUTED, within)
          .orElseThrow();
    }

    double meanParallax() {
      double ln =
          north.stream()
              .mapToDouble(o -> Math.log(o.sight().geocentricDistanceKm()))
              .average()
              .orElseThrow();
      return 6378.137 / Math.exp(ln);
    }

    private Observation reading(MoonSight sight) {
      return new Observation(
          sight.at(),
          Axis.HORIZONTAL,
          sight.horizontalDiameterArcmin() * Math.exp(random.nextNormal(0, READING_SD)),
          READING_SD,
          sight,
          0,
          Sighted.NONE);
    }
  }
}

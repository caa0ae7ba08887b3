package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What holds for every instant and site; seeded. */
class SkyPropertyTest {

  private final Sky sky = SkyFixture.sky();
  private final SplittableRandom random = new SplittableRandom(20240325);

  @Test
  void keepsEveryFigureInItsRange() {
    for (int i = 0; i < 20_000; i++) {
      MoonSight sight = sky.moonAt(instant(), site());
      assertThat(sight.geocentricDistanceKm()).isBetween(356_300.0, 406_800.0);
      assertThat(sight.topocentricDistanceKm() - sight.geocentricDistanceKm())
          .isBetween(-6388.0, 6388.0);
      assertThat(sight.horizontalDiameterArcmin() * sight.topocentricDistanceKm())
          .isCloseTo(2 * 1737.4 * 60 * 180 / Math.PI, within(50.0));
      assertThat(sight.verticalDiameterArcmin() / sight.horizontalDiameterArcmin())
          .isBetween(0.75, 1.0 + 1e-12);
      assertThat(sight.altitudeDeg()).isBetween(-90.0, 90.0);
      assertThat(sight.apparentAltitudeDeg() - sight.altitudeDeg()).isBetween(-1e-4, 0.75);
      assertThat(sight.azimuthDeg()).isBetween(0.0, Math.nextDown(360.0));
      assertThat(sight.illuminatedFraction()).isBetween(0.0, 1.0);
      assertThat(sight.sunSeparationDeg()).isBetween(0.0, 180.0);
      assertThat(sight.sunAltitudeDeg()).isBetween(-90.0, 90.0);
      assertThat(sight.sublunarLatitudeDeg()).isBetween(-29.0, 29.0);
      assertThat(sight.sublunarLongitudeDeg()).isBetween(-180.0, 180.0);
      assertThat(sight.diameterArcmin(Axis.LIMB_FIT))
          .isBetween(
              sight.verticalDiameterArcmin() - 1e-9, sight.horizontalDiameterArcmin() + 1e-9);
    }
  }

  /**
   * The lit part of the disc follows from the Moon's distance from the Sun to the Sun's parallax.
   */
  @Test
  void lightsTheDiscAsTheSunSeparationSays() {
    for (int i = 0; i < 2000; i++) {
      MoonSight sight = sky.moonAt(instant(), site());
      double expected = (1 - Math.cos(Math.toRadians(sight.sunSeparationDeg()))) / 2;
      assertThat(sight.illuminatedFraction()).isCloseTo(expected, within(0.0015));
    }
  }

  @Test
  void splitsApsidesAndPassesAtAnyInstant() {
    for (int i = 0; i < 40; i++) {
      Instant from = instant();
      Instant to = earlier(from.plus(Duration.ofDays(60)), sky.ephemerisTo());
      Site site = site();
      List<Apsis> apsides = sky.apsides(from, to);
      List<Pass> passes = sky.passes(from, to, site);
      Instant cut = from.plusSeconds(random.nextLong(Duration.between(from, to).toSeconds() + 1));
      assertThat(joined(sky.apsides(from, cut), sky.apsides(cut, to))).isEqualTo(apsides);
      assertThat(joined(sky.passes(from, cut, site), sky.passes(cut, to, site))).isEqualTo(passes);
    }
  }

  /** An apsis exactly at the cut belongs to the later part. */
  @Test
  void givesAnApsisAtTheCutToTheLaterPart() {
    Instant from = Instant.parse("2024-01-01T00:00:00Z");
    Instant to = Instant.parse("2024-03-01T00:00:00Z");
    Instant cut = sky.apsides(from, to).get(1).at();
    assertThat(sky.apsides(from, cut)).hasSize(1);
    assertThat(sky.apsides(cut, to).get(0).at()).isEqualTo(cut);
  }

  /** Perigee and apogee alternate, 12 to 17 days apart, over the whole ephemeris. */
  @Test
  void alternatesPerigeesAndApogees() {
    List<Apsis> apsides = sky.apsides(sky.ephemerisFrom(), sky.ephemerisTo());
    assertThat(apsides).hasSizeBetween(2120, 2122);
    for (int i = 1; i < apsides.size(); i++) {
      assertThat(apsides.get(i).kind()).isNotEqualTo(apsides.get(i - 1).kind());
      assertThat(Duration.between(apsides.get(i - 1).at(), apsides.get(i).at()))
          .isBetween(Duration.ofDays(11), Duration.ofDays(17));
    }
  }

  @Test
  void measuresTheDaysToThePerigeeThatIsNearest() {
    List<Instant> perigees =
        sky.apsides(sky.ephemerisFrom(), sky.ephemerisTo()).stream()
            .filter(apsis -> apsis.kind() == Apsis.Kind.PERIGEE)
            .map(Apsis::at)
            .toList();
    for (int i = 0; i < 500; i++) {
      Instant at =
          earlier(instant().plus(Duration.ofDays(30)), Instant.parse("2059-11-01T00:00:00Z"));
      double nearest =
          perigees.stream()
              .mapToDouble(perigee -> Duration.between(perigee, at).toMillis() / 86_400_000.0)
              .boxed()
              .min((a, b) -> Double.compare(Math.abs(a), Math.abs(b)))
              .orElseThrow();
      assertThat(sky.daysFromPerigee(at)).isCloseTo(nearest, within(2e-5));
    }
  }

  @Test
  void answersManyThreadsAsOne() {
    List<Instant> instants = IntStream.range(0, 4000).mapToObj(i -> instant()).toList();
    Site site = new Site(35.7, 139.7, 40);
    List<MoonSight> alone = instants.stream().map(at -> sky.moonAt(at, site)).toList();
    List<MoonSight> together = instants.parallelStream().map(at -> sky.moonAt(at, site)).toList();
    assertThat(together).isEqualTo(alone);
  }

  private Instant instant() {
    long span = Duration.between(sky.ephemerisFrom(), sky.ephemerisTo()).toMillis();
    return sky.ephemerisFrom().plusMillis(random.nextLong(span));
  }

  private Site site() {
    return new Site(
        random.nextDouble(-90, 90), random.nextDouble(-180, 180), random.nextDouble(-400, 8800));
  }

  private static Instant earlier(Instant a, Instant b) {
    return a.isBefore(b) ? a : b;
  }

  private static <T> List<T> joined(List<T> first, List<T> second) {
    List<T> all = new ArrayList<>(first);
    all.addAll(second);
    return all;
  }
}

package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.shredzone.commons.suncalc.MoonIllumination;
import org.shredzone.commons.suncalc.MoonPosition;
import org.shredzone.commons.suncalc.MoonTimes;
import org.shredzone.commons.suncalc.SunPosition;

/**
 * A second opinion over the year 2025: commons-suncalc 3.11, a general-purpose library with a
 * truncated lunar series of its own (Montenbruck and Pfleger).
 */
class SecondOpinionReferenceTest {

  private static final Instant FROM = Instant.parse("2025-01-01T00:00:00Z");
  private static final Instant TO = Instant.parse("2026-01-01T00:00:00Z");

  private final Sky sky = SkyFixture.sky();
  private final Times times = new Times();
  private final EarthRotation rotation = new EarthRotation(times.scales());

  /**
   * Every 5 hours. The library's altitude and azimuth are those of the direction from the Earth's
   * centre; its series is short by up to 5 arcminutes and 1200 km, its Sun by up to 0.02 degrees,
   * and its illuminated fraction is geocentric, up to 0.0096 from that of a site.
   */
  @ParameterizedTest
  @CsvSource({
    "-0.18, -78.47", // Quito, equator
    "40.42, -3.70", // Madrid, mid-latitude
    "-41.29, 174.78", // Wellington, southern, near the date line
    "78.22, 15.63", // Longyearbyen, polar
    "-90, 0" // South Pole
  })
  void agreesOnAltitudeAndAzimuth(double latitudeDeg, double longitudeDeg) {
    Site site = new Site(latitudeDeg, longitudeDeg, 0);
    Horizon horizon = Horizon.of(site);
    for (Instant at = FROM; at.isBefore(TO); at = at.plusSeconds(5 * 3600)) {
      MoonSight sight = sky.moonAt(at, site);
      MoonPosition other = MoonPosition.compute().on(at).at(latitudeDeg, longitudeDeg).execute();
      Vector3D fromCentre =
          rotation
              .at(times.date(at))
              .toEarth()
              .applyTo(SkyFixture.ephemeris().moonKm(times.tdbDays(at)));
      double altitudeDeg = horizon.altitudeDeg(fromCentre);
      assertThat(altitudeDeg)
          .as("altitude, %s", at)
          .isCloseTo(other.getTrueAltitude(), within(0.09));
      double azimuthOffDeg =
          Math.IEEEremainder(horizon.azimuthDeg(fromCentre) - other.getAzimuth(), 360);
      assertThat(azimuthOffDeg * Math.cos(Math.toRadians(altitudeDeg)))
          .as("azimuth, %s", at)
          .isCloseTo(0, within(0.09));
      assertThat(sight.geocentricDistanceKm())
          .as("distance, %s", at)
          .isCloseTo(other.getDistance(), within(1200.0));
      assertThat(sight.sunAltitudeDeg())
          .as("Sun, %s", at)
          .isCloseTo(
              SunPosition.compute()
                  .on(at)
                  .at(latitudeDeg, longitudeDeg)
                  .execute()
                  .getTrueAltitude(),
              within(0.025));
      assertThat(sight.illuminatedFraction())
          .as("phase, %s", at)
          .isCloseTo(MoonIllumination.compute().on(at).execute().getFraction(), within(0.011));
    }
  }

  /**
   * The bright limb against the zenith, every 5 hours while a quarter of the disc and more is lit
   * or dark, so that the library's geocentric Sun and Moon (parallax up to a degree) tell its
   * direction to two degrees.
   */
  @ParameterizedTest
  @CsvSource({"-0.18, -78.47", "40.42, -3.70", "-41.29, 174.78"})
  void agreesOnTheBrightLimb(double latitudeDeg, double longitudeDeg) {
    Site site = new Site(latitudeDeg, longitudeDeg, 0);
    int compared = 0;
    for (Instant at = FROM; at.isBefore(TO); at = at.plusSeconds(5 * 3600)) {
      MoonIllumination light = MoonIllumination.compute().on(at).execute();
      MoonPosition place = MoonPosition.compute().on(at).at(latitudeDeg, longitudeDeg).execute();
      if (Math.abs(light.getFraction() - 0.5) > 0.25 || Math.abs(place.getTrueAltitude()) > 80) {
        continue;
      }
      double other = 90 + light.getAngle() - place.getParallacticAngle();
      double off = Math.IEEEremainder(sky.brightLimbDeg(at, site) - other, 360);
      assertThat(off).as("bright limb, %s", at).isCloseTo(0, within(2.0));
      compared++;
    }
    assertThat(compared).isGreaterThan(300);
  }

  /**
   * Every rise and set of the year, with parallax, semidiameter and the same refraction of 34'. In
   * low and middle latitudes to 40 s; near the pole, where the Moon crosses the horizon at a slant
   * of a few degrees, the library's arcminutes make minutes.
   */
  @ParameterizedTest
  @CsvSource({
    "-0.18, -78.47, 40", // Quito
    "40.42, -3.70, 40", // Madrid
    "-41.29, 174.78, 40", // Wellington
    "-54.80, -68.30, 60", // Ushuaia
    "69.65, 18.96, 180", // Tromso
    "78.22, 15.63, 180" // Longyearbyen
  })
  void agreesOnRiseAndSet(double latitudeDeg, double longitudeDeg, int toleranceS) {
    List<Pass> passes =
        sky.passes(
            FROM.minus(Duration.ofDays(2)),
            TO.plus(Duration.ofDays(2)),
            new Site(latitudeDeg, longitudeDeg, 0));
    same(
        passes.stream().flatMap(pass -> pass.riseAt().stream()).toList(),
        others(latitudeDeg, longitudeDeg, MoonTimes::getRise),
        toleranceS);
    same(
        passes.stream().flatMap(pass -> pass.setAt().stream()).toList(),
        others(latitudeDeg, longitudeDeg, MoonTimes::getSet),
        toleranceS);
  }

  private static void same(List<Instant> all, List<Instant> others, int toleranceS) {
    List<Instant> ours = all.stream().filter(at -> !at.isBefore(FROM) && at.isBefore(TO)).toList();
    assertThat(others).hasSizeGreaterThan(90);
    assertThat(ours).hasSameSizeAs(others);
    for (int i = 0; i < ours.size(); i++) {
      assertThat(Duration.between(ours.get(i), others.get(i)).abs())
          .as("ours %s, other %s", ours.get(i), others.get(i))
          .isLessThan(Duration.ofSeconds(toleranceS));
    }
  }

  private static List<Instant> others(
      double latitudeDeg, double longitudeDeg, Function<MoonTimes, @Nullable ZonedDateTime> event) {
    List<Instant> found = new ArrayList<>();
    Instant after = FROM;
    while (after.isBefore(TO)) {
      ZonedDateTime next =
          event.apply(
              MoonTimes.compute().on(after).at(latitudeDeg, longitudeDeg).fullCycle().execute());
      if (next == null || !next.toInstant().isBefore(TO)) {
        break;
      }
      found.add(next.toInstant());
      after = next.toInstant().plusSeconds(60);
    }
    return found;
  }
}

package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SkyTest {

  private static final Instant AT = Instant.parse("2024-03-25T20:00:00Z");
  private static final Site SITE = new Site(48, 11, 500);

  private final Sky sky = SkyFixture.sky();

  @Test
  void statesItsSpan() {
    assertThat(sky.ephemerisFrom()).isEqualTo("1979-12-30T00:00:00Z");
    assertThat(sky.ephemerisTo()).isEqualTo("2060-01-01T00:00:00Z");
  }

  @Test
  void answersAtBothEnds() {
    for (Instant at : List.of(sky.ephemerisFrom(), sky.ephemerisTo().minusNanos(1))) {
      assertThat(sky.moonAt(at, SITE).geocentricDistanceKm()).isBetween(356000.0, 407000.0);
      assertThat(sky.geocentricDistanceKm(at)).isBetween(356000.0, 407000.0);
      assertThat(sky.daysFromPerigee(at)).isBetween(-14.4, 14.4);
    }
    Site pole = new Site(90, 0, 0);
    assertThat(sky.apsides(sky.ephemerisFrom(), sky.ephemerisFrom().plus(Duration.ofDays(30))))
        .hasSizeBetween(2, 3);
    assertThat(sky.apsides(sky.ephemerisTo().minus(Duration.ofDays(30)), sky.ephemerisTo()))
        .hasSizeBetween(2, 3);
    assertThat(sky.passes(sky.ephemerisFrom(), sky.ephemerisFrom().plus(Duration.ofDays(28)), pole))
        .hasSize(1);
    assertThat(sky.passes(sky.ephemerisTo().minus(Duration.ofDays(28)), sky.ephemerisTo(), pole))
        .hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1979-12-29T23:59:59.999999999Z",
        "2060-01-01T00:00:00Z",
        "-1000000000-01-01T00:00:00Z",
        "+1000000000-12-31T23:59:59.999999999Z"
      })
  void refusesInstantsOutsideTheEphemeris(Instant at) {
    String message =
        "at " + at + ": expected from 1979-12-30T00:00:00Z to before 2060-01-01T00:00:00Z";
    assertThatIllegalArgumentException()
        .isThrownBy(() -> sky.moonAt(at, SITE))
        .withMessage(message);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> sky.geocentricDistanceKm(at))
        .withMessage(message);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> sky.daysFromPerigee(at))
        .withMessage(message);
  }

  @Test
  void refusesIntervalsThatLeaveTheEphemeris() {
    Instant early = sky.ephemerisFrom().minusMillis(1);
    Instant late = sky.ephemerisTo().plusMillis(1);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> sky.apsides(early, AT))
        .withMessage(
            "from 1979-12-29T23:59:59.999Z: expected from 1979-12-30T00:00:00Z to"
                + " 2060-01-01T00:00:00Z");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> sky.passes(AT, late, SITE))
        .withMessageStartingWith("to 2060-01-01T00:00:00.001Z: expected from");
  }

  @Test
  void refusesIntervalsThatRunBackwards() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> sky.passes(AT, AT.minusMillis(1), SITE))
        .withMessage(
            "from 2024-03-25T20:00:00Z: expected no later than to, 2024-03-25T19:59:59.999Z");
  }

  @Test
  void findsNothingInAnEmptyInterval() {
    assertThat(sky.apsides(AT, AT)).isEmpty();
    assertThat(sky.passes(AT, AT, SITE)).isEmpty();
    assertThat(sky.apsides(sky.ephemerisTo(), sky.ephemerisTo())).isEmpty();
  }

  @Test
  void takesTheMeanAirOfTheSiteByDefault() {
    assertThat(sky.moonAt(AT, SITE)).isEqualTo(sky.moonAt(AT, SITE, Atmosphere.meanAt(500)));
  }

  @Test
  void seesTheSameFromBothNamesOfTheDateLine() {
    MoonSight east = sky.moonAt(AT, new Site(-17, 180, 0));
    MoonSight west = sky.moonAt(AT, new Site(-17, -180, 0));
    assertThat(west.topocentricDistanceKm()).isCloseTo(east.topocentricDistanceKm(), within(1e-6));
    assertThat(west.altitudeDeg()).isCloseTo(east.altitudeDeg(), within(1e-10));
    assertThat(west.azimuthDeg()).isCloseTo(east.azimuthDeg(), within(1e-10));
  }

  /**
   * At a pole the altitude is the declination, lowered by parallax; the longitude only turns it.
   */
  @Test
  void standsAtThePoles() {
    MoonSight north = sky.moonAt(AT, new Site(90, 0, 0));
    MoonSight turned = sky.moonAt(AT, new Site(90, 90, 0));
    MoonSight south = sky.moonAt(AT, new Site(-90, 0, 0));
    assertThat(turned.altitudeDeg()).isCloseTo(north.altitudeDeg(), within(1e-9));
    assertThat(Math.IEEEremainder(turned.azimuthDeg() - north.azimuthDeg() - 90, 360))
        .isCloseTo(0, within(1e-9));
    double parallaxDeg = Math.toDegrees(6356.75 / north.geocentricDistanceKm());
    assertThat(north.altitudeDeg())
        .isCloseTo(north.sublunarLatitudeDeg() - parallaxDeg, within(0.02));
    assertThat(south.altitudeDeg())
        .isCloseTo(-north.sublunarLatitudeDeg() - parallaxDeg, within(0.02));
  }

  /** At the sublunar point the Moon stands in the zenith, but for the flattened Earth's normal. */
  @Test
  void standsInTheZenithOfTheSublunarPoint() {
    MoonSight first = sky.moonAt(AT, SITE);
    double geodeticDeg =
        Math.toDegrees(
            Math.atan(Math.tan(Math.toRadians(first.sublunarLatitudeDeg())) / 0.99330562));
    MoonSight sight = sky.moonAt(AT, new Site(geodeticDeg, first.sublunarLongitudeDeg(), 0));
    assertThat(sight.altitudeDeg()).isGreaterThan(89.8);
    assertThat(sight.geocentricDistanceKm() - sight.topocentricDistanceKm())
        .isBetween(6356.0, 6379.0);
  }

  /** On the equator, at the Moon's rise and set, the distance is the geocentric one. */
  @Test
  void addsNothingToTheSizeAtTheHorizon() {
    Site equator = new Site(0, -78, 0);
    Pass pass = sky.passes(AT, AT.plus(Duration.ofDays(2)), equator).get(0);
    MoonSight rise = pass.rise().orElseThrow();
    assertThat(rise.topocentricDistanceKm())
        .isCloseTo(
            rise.geocentricDistanceKm() + 6378 * Math.sin(Math.toRadians(0.85)), within(60.0));
    assertThat(pass.predictedRatio().orElseThrow()).isBetween(1.008, 1.022);
  }

  /**
   * 2016-12-31 23:59:60 was inserted: from 23:59:59 to 00:00:00 two seconds pass, and the Moon
   * recedes twice as far as from 23:59:58 to 23:59:59.
   */
  @Test
  void countsTheLeapSecond() {
    double rate = distance("2016-12-31T23:59:59Z") - distance("2016-12-31T23:59:58Z");
    double across = distance("2017-01-01T00:00:00Z") - distance("2016-12-31T23:59:59Z");
    double after = distance("2017-01-01T00:00:01Z") - distance("2017-01-01T00:00:00Z");
    assertThat(across / rate).isCloseTo(2, within(1e-3));
    assertThat(after / rate).isCloseTo(1, within(1e-3));
  }

  private double distance(String at) {
    return sky.geocentricDistanceKm(Instant.parse(at));
  }

  @Test
  void countsDaysFromTheNearestPerigee() {
    Instant perigee = Instant.parse("2022-07-13T09:05:32.694Z");
    assertThat(sky.daysFromPerigee(perigee)).isCloseTo(0, within(1e-6));
    assertThat(sky.daysFromPerigee(perigee.minus(Duration.ofDays(3)))).isCloseTo(-3, within(1e-6));
    assertThat(sky.daysFromPerigee(perigee.plus(Duration.ofDays(13)))).isCloseTo(13, within(1e-6));
    assertThat(sky.daysFromPerigee(perigee.plus(Duration.ofDays(15))))
        .isCloseTo(15 - 28.335613, within(1e-5));
  }
}

package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.Apsis.Kind;

/** Perigees and apogees against published ones. */
class ApsidesReferenceTest {

  private final Sky sky = SkyFixture.sky();

  /**
   * F. Espenak, Moon at Perigee and Apogee. His method (Meeus, ch. 50) is stated to be good to 31
   * minutes and 12 km at perigee, 3 minutes and 6 km at apogee.
   */
  @Test
  void agreesWithEspenakOn2021And2022() {
    List<Apsis> apsides = sky.apsides(start(2021), start(2023));
    List<String[]> rows = Published.rows("apsides-2021-2022-espenak.csv");
    assertThat(apsides).hasSameSizeAs(rows);
    for (int i = 0; i < rows.size(); i++) {
      Apsis apsis = apsides.get(i);
      String[] row = rows.get(i);
      boolean perigee = row[0].equals("perigee");
      assertThat(apsis.kind()).isEqualTo(perigee ? Kind.PERIGEE : Kind.APOGEE);
      assertThat(between(apsis.at(), Published.minute(row[1])))
          .as("instant of %s", row[1])
          .isLessThan(Duration.ofMinutes(perigee ? 31 : 3));
      assertThat(apsis.distanceKm())
          .as("distance of %s", row[1])
          .isCloseTo(Double.parseDouble(row[2]), within(perigee ? 12.0 : 6.0));
    }
  }

  /**
   * J. Meeus, Astronomical Algorithms (2nd ed. 1998), example 50.a: apogee of 1988 October 7, JDE
   * 2447442.3543, parallax 3240.679 arcseconds. Largest errors of the method 3 minutes, 6 km.
   */
  @Test
  void agreesWithMeeusExample50a() {
    Apsis apogee =
        sky.apsides(Instant.parse("1988-10-01T00:00:00Z"), Instant.parse("1988-10-15T00:00:00Z"))
            .get(0);
    assertThat(apogee.kind()).isEqualTo(Kind.APOGEE);
    Instant published = ofTerrestrialTime("1988-10-07T20:30:11Z", 55.184 + 1);
    assertThat(between(apogee.at(), published)).isLessThan(Duration.ofMinutes(3));
    double distanceKm = 6378.14 / Math.sin(Math.toRadians(3240.679 / 3600));
    assertThat(apogee.distanceKm()).isCloseTo(distanceKm, within(6.0));
  }

  /**
   * Meeus, ch. 50, p. 361: the perigees that bound the longest and the shortest interval of his
   * search, to a tenth of an hour TD: 1997 December 9 16.9h, 1998 January 3 8.5h; 1990 December 2
   * 10.8h, 1990 December 30 23.8h.
   */
  @Test
  void agreesWithMeeusOnExtremeIntervals() {
    perigee(ofTerrestrialTime("1997-12-09T16:54:00Z", 63.184));
    perigee(ofTerrestrialTime("1998-01-03T08:30:00Z", 63.184));
    perigee(ofTerrestrialTime("1990-12-02T10:48:00Z", 57.184));
    perigee(ofTerrestrialTime("1990-12-30T23:48:00Z", 57.184));
  }

  private void perigee(Instant published) {
    List<Apsis> found =
        sky.apsides(published.minus(Duration.ofMinutes(4)), published.plus(Duration.ofMinutes(4)));
    assertThat(found).as("perigee of %s", published).hasSize(1);
    assertThat(found.get(0).kind()).isEqualTo(Kind.PERIGEE);
  }

  /** 2016 November 14: 356509 km, the closest between 1948 and 2034 (widely published). */
  @Test
  void findsTheClosePerigeeOf2016() {
    Apsis closest = closest(start(1980), start(2034));
    assertThat(closest.at()).isBetween("2016-11-14T11:15:00Z", "2016-11-14T11:30:00Z");
    assertThat(closest.distanceKm()).isCloseTo(356509, within(0.6));
  }

  /**
   * Hemelkalender (Belgian almanac), glossary, perigee: from 1960 to 2040 the extremes are 356445
   * km on 2034 November 25, 370354 km on 1988 December 16 and, at apogee, 406712 km on 1984 March
   * 2.
   */
  @Test
  void findsTheExtremesOfTheAlmanac() {
    List<Apsis> apsides = sky.apsides(start(1980), start(2041));
    Apsis closest = closest(start(1980), start(2041));
    assertThat(closest.distanceKm()).isCloseTo(356445, within(1.0));
    assertThat(closest.at()).isBetween("2034-11-25T00:00:00Z", "2034-11-26T00:00:00Z");
    Apsis shallowest =
        apsides.stream()
            .filter(apsis -> apsis.kind() == Kind.PERIGEE)
            .max((a, b) -> Double.compare(a.distanceKm(), b.distanceKm()))
            .orElseThrow();
    assertThat(shallowest.distanceKm()).isCloseTo(370354, within(1.0));
    assertThat(shallowest.at()).isBetween("1988-12-16T00:00:00Z", "1988-12-17T00:00:00Z");
    Apsis farthest =
        apsides.stream()
            .max((a, b) -> Double.compare(a.distanceKm(), b.distanceKm()))
            .orElseThrow();
    assertThat(farthest.distanceKm()).isCloseTo(406712, within(1.0));
    assertThat(farthest.at()).isBetween("1984-03-02T00:00:00Z", "1984-03-03T00:00:00Z");
  }

  private Apsis closest(Instant from, Instant to) {
    return sky.apsides(from, to).stream()
        .min((a, b) -> Double.compare(a.distanceKm(), b.distanceKm()))
        .orElseThrow();
  }

  private static Instant start(int year) {
    return Instant.parse(year + "-01-01T00:00:00Z");
  }

  /** TT to UTC by the difference of the year. */
  private static Instant ofTerrestrialTime(String at, double ttMinusUtcS) {
    return Instant.parse(at).minusMillis(Math.round(ttMinusUtcS * 1000));
  }

  private static Duration between(Instant a, Instant b) {
    return Duration.between(a, b).abs();
  }
}

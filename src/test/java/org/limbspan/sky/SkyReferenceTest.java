package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Positions, sizes and phases seen from the Earth's centre against published values. */
class SkyReferenceTest {

  /** 1992 April 12, 0h TD; TD - UTC was 58.184 s. */
  private static final Instant MEEUS_47A = Instant.parse("1992-04-11T23:59:01.816Z");

  private final Sky sky = SkyFixture.sky();
  private final Ephemeris ephemeris = SkyFixture.ephemeris();
  private final Times times = new Times();
  private final EarthRotation rotation = new EarthRotation(times.scales());

  /**
   * J. Meeus, Astronomical Algorithms (2nd ed. 1998), example 47.a: 368409.7 km by a truncated
   * series known to about 10 km.
   */
  @Test
  void agreesWithMeeusExample47aOnTheDistance() {
    assertThat(sky.geocentricDistanceKm(MEEUS_47A)).isCloseTo(368409.7, within(10.0));
  }

  /** The same instant by DE405 itself, evaluated independently of this code: 368405.54 km. */
  @Test
  void agreesWithDe405() {
    assertThat(sky.geocentricDistanceKm(MEEUS_47A)).isCloseTo(368405.54, within(0.01));
  }

  /**
   * Example 47.a: apparent right ascension 134.688469, declination +13.768367 degrees; his series
   * is known to 10 arcseconds in longitude, 4 in latitude.
   */
  @Test
  void agreesWithMeeusExample47aOnTheDirection() {
    Vector3D moon = ofDate(MEEUS_47A, ephemeris.moonKm(times.tdbDays(MEEUS_47A)));
    assertThat(Math.toDegrees(moon.getAlpha())).isCloseTo(134.688469, within(10.0 / 3600));
    assertThat(Math.toDegrees(moon.getDelta())).isCloseTo(13.768367, within(5.0 / 3600));
  }

  /**
   * Example 48.a: the Sun at the same instant, right ascension 20.6579, declination 8.6964 degrees,
   * distance 149971520 km; his low-accuracy Sun is good to 0.01 degrees.
   */
  @Test
  void agreesWithMeeusExample48aOnTheSun() {
    Vector3D sun = ofDate(MEEUS_47A, ephemeris.sunKm(times.tdbDays(MEEUS_47A) - 499.0 / 86400));
    assertThat(Math.toDegrees(sun.getAlpha())).isCloseTo(20.6579, within(0.01));
    assertThat(Math.toDegrees(sun.getDelta())).isCloseTo(8.6964, within(0.01));
    assertThat(sun.getNorm()).isCloseTo(149971520, within(20000.0));
  }

  /** Example 48.a from its own coordinates: i = 69.0756 degrees, so k = 0.6786. */
  @Test
  void agreesWithMeeusExample48aOnThePhase() {
    double fraction =
        Disc.illuminatedFraction(
            Directions.of(134.6885, 13.7684, 368410), Directions.of(20.6579, 8.6964, 149971520));
    assertThat(fraction)
        .isCloseTo((1 + Math.cos(Math.toRadians(69.0756))) / 2, within(1e-6))
        .isCloseTo(0.6786, within(5e-5));
  }

  /**
   * NASA Scientific Visualization Studio, Moon Phase and Libration 2024 (SVS 5187), every 6 h of
   * the year: phase in percent to two digits; direction, right ascension to 0.0001 h, which is
   * 0.00075 degrees, and declination.
   */
  @Test
  void agreesWithTheVisualizationStudioOnPhaseAndDirection() {
    for (String[] row : Published.rows("moon-2024-every-6h.csv")) {
      Instant at = Published.minute(row[0]);
      double days = times.tdbDays(at);
      Vector3D moon = ephemeris.moonKm(days);
      Vector3D sun = ephemeris.sunKm(days - 499.0 / 86400);
      assertThat(100 * Disc.illuminatedFraction(moon, sun))
          .as("phase, %s", at)
          .isCloseTo(number(row, 1), within(0.006));
      Vector3D published = Directions.of(15 * number(row, 5), number(row, 6), 1);
      assertThat(Math.toDegrees(Vector3D.angle(moon, published)))
          .as("direction, %s", at)
          .isLessThan(0.001);
    }
  }

  private Vector3D ofDate(Instant at, Vector3D vector) {
    return rotation.at(times.date(at)).trueEquator().applyTo(vector);
  }

  private static double number(String[] row, int column) {
    return Double.parseDouble(row[column]);
  }
}

package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.junit.jupiter.api.Test;

/** Geocentric distance against published values. */
class SkyReferenceTest {

  private final Sky sky = SkyFixture.sky();

  /**
   * J. Meeus, Astronomical Algorithms (2nd ed. 1998), example 47.a: 1992 April 12, 0h TD, 368409.7
   * km by a truncated series known to about 10 km. TD - UTC was 58.184 s.
   */
  @Test
  void agreesWithMeeusExample47a() {
    assertThat(sky.geocentricDistanceKm(Instant.parse("1992-04-11T23:59:01.816Z")))
        .isCloseTo(368409.7, within(10.0));
  }

  /** The same instant by DE405 itself: 368405.54 km, evaluated independently of this code. */
  @Test
  void agreesWithDe405() {
    assertThat(sky.geocentricDistanceKm(Instant.parse("1992-04-11T23:59:01.816Z")))
        .isCloseTo(368405.54, within(0.01));
  }
}

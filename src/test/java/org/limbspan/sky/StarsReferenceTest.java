package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Stars against the test figures that ERFA (the IAU's SOFA under a free licence) ships. */
class StarsReferenceTest {

  private static final double MAS = Math.toRadians(1 / 3.6e6);
  private static final double ARCSECOND_DEG = 1.0 / 3600;

  /**
   * eraAtco13 of t_erfa_c.c: a star seen from a site in the far south, through air. Our UT1 is UTC,
   * so the instant is moved by its UT1 - UTC of 0.155 s. What remains is polar motion (0.4
   * arcseconds), parallax (0.1), diurnal aberration. The altitude is told through their air of 731
   * hPa and 12.8 degrees; ours is the mean one: 4 arcminutes of refraction, known to 3 percent.
   */
  @Test
  void standsWhereErfaSeesIt() {
    Instant at = Instant.parse("2013-04-02T23:15:43.550Z").plusMillis(155);
    Site site = new Site(Math.toDegrees(-1.2345856), Math.toDegrees(-0.527800806), 2738);
    CatalogueStar star =
        new CatalogueStar(
            Math.toDegrees(2.71), Math.toDegrees(0.174), 1e-5 * Math.cos(0.174) / MAS, 5e-6 / MAS);
    StarSight sight = SkyFixture.sky().starAt(at, site, star);
    assertThat(sight.azimuthDeg())
        .isCloseTo(Math.toDegrees(0.0925177448549), within(ARCSECOND_DEG));
    assertThat(sight.apparentAltitudeDeg())
        .isCloseTo(90 - Math.toDegrees(1.407661405256), within(8 * ARCSECOND_DEG));
  }

  /** eraStarpm of t_erfa_c.c, 3653 days; without radial velocity and parallax 2 mas apart. */
  @Test
  void movesAsErfaMovesIt() {
    double dec = -1.093989828;
    CatalogueStar star =
        new CatalogueStar(
            Math.toDegrees(0.01686756),
            Math.toDegrees(dec),
            -1.78323516e-5 * Math.cos(dec) / MAS,
            2.336024047e-6 / MAS);
    Instant later = Instant.parse("2000-01-01T11:58:56Z").plus(Duration.ofDays(3653));
    Vector3D expected = new Vector3D(0.0166891906941426, -1.093966454217128);
    assertThat(Vector3D.angle(star.directionAt(later), expected)).isLessThan(5 * MAS);
  }

  @Test
  void refusesPlacesAndMotionsThatAreNone() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new CatalogueStar(360, 0, 0, 0))
        .withMessageContaining("rightAscensionDeg 360.0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new CatalogueStar(0, Double.NaN, 0, 0))
        .withMessageContaining("declinationDeg");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new CatalogueStar(0, 0, 0, 20_001))
        .withMessageContaining("motionNorthMasPerYear");
  }
}

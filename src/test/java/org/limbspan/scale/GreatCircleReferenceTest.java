package org.limbspan.scale;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Angles between directions, against a textbook, a test figure of ERFA, and Hipparchus. */
class GreatCircleReferenceTest {

  /** J. Meeus, Astronomical Algorithms (2nd ed. 1998), example 17.a: Arcturus and Spica. */
  @Test
  void separatesArcturusAndSpicaAsTheTextbookDoes() {
    assertThat(GreatCircle.separationDeg(213.9154, 19.1825, 201.2983, -11.1614))
        .isCloseTo(32.7930, within(0.00005));
  }

  /** ERFA's own test of eraSeps (t_erfa_c.c): (1, 0.1) and (0.2, -3) radians. */
  @Test
  void agreesWithTheTestFigureOfErfa() {
    // A latitude of -3 radians lies beyond the pole: the same direction is (0.2 + pi, 3 - pi).
    double separationDeg =
        GreatCircle.separationDeg(
            Math.toDegrees(1),
            Math.toDegrees(0.1),
            Math.toDegrees(0.2 + Math.PI),
            Math.toDegrees(3 - Math.PI));
    assertThat(Math.toRadians(separationDeg)).isCloseTo(2.346722016996999, within(1e-14));
  }

  /** Mizar and Alcor, 708.5 arcseconds: places of the Hipparcos catalogue, from memory. */
  @Test
  void separatesAWellKnownPair() {
    double mizarRa = 15 * (13 + 23 / 60.0 + 55.5405 / 3600);
    double alcorRa = 15 * (13 + 25 / 60.0 + 13.5378 / 3600);
    double mizarDec = 54 + 55 / 60.0 + 31.267 / 3600;
    double alcorDec = 54 + 59 / 60.0 + 16.655 / 3600;
    assertThat(3600 * GreatCircle.separationDeg(mizarRa, mizarDec, alcorRa, alcorDec))
        .isCloseTo(708.5, within(0.5));
  }

  /** Vector3D.angle of Hipparchus 4, from a milliarcsecond to the antipode. */
  @Test
  void agreesWithHipparchusAtEverySize() {
    Random random = new Random(17);
    for (int i = 0; i < 2000; i++) {
      double ra = 360 * random.nextDouble();
      double dec = Math.toDegrees(Math.asin(2 * random.nextDouble() - 1));
      double away = Math.pow(10, -7 + 9 * random.nextDouble());
      double otherRa = ra + away * random.nextGaussian();
      double otherDec = Math.max(-90, Math.min(90, dec + away * random.nextGaussian()));
      double expected =
          Math.toDegrees(Vector3D.angle(direction(ra, dec), direction(otherRa, otherDec)));
      assertThat(GreatCircle.separationDeg(ra, dec, otherRa, otherDec))
          .as("%s %s to %s %s", ra, dec, otherRa, otherDec)
          .isCloseTo(expected, within(1e-12));
    }
  }

  /** Where the arc cosine of the dot product would answer 0: a milliarcsecond along a meridian. */
  @Test
  void keepsItsDigitsForTheNearestStars() {
    double mas = 1 / 3.6e6;
    assertThat(GreatCircle.separationDeg(30, 0, 30, mas)).isCloseTo(mas, within(1e-15));
    assertThat(GreatCircle.separationDeg(30, 0, 30, 0)).isZero();
    assertThat(GreatCircle.separationDeg(0, 90, 123, -90)).isCloseTo(180, within(1e-12));
  }

  @Test
  void refusesWhatIsNoDirection() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> GreatCircle.separationDeg(0, 90.1, 0, 0))
        .withMessageContaining("latitudeADeg 90.1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> GreatCircle.separationDeg(0, 0, Double.NaN, 0))
        .withMessageContaining("longitudeBDeg");
  }

  private static Vector3D direction(double raDeg, double decDeg) {
    return new Vector3D(Math.toRadians(raDeg), Math.toRadians(decDeg));
  }
}

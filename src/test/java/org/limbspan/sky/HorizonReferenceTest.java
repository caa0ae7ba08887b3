package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.limbspan.sky.Directions.dms;

import java.time.Instant;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Parallax, augmentation and horizon against the worked examples of a book. */
class HorizonReferenceTest {

  private static final double EARTH_RADIUS_KM = 6378.14;

  private final Times times = new Times();
  private final EarthRotation rotation = new EarthRotation(times.scales());

  /**
   * J. Meeus, Astronomical Algorithms (2nd ed. 1998), exercise of ch. 40, p. 282: a Moon of
   * geocentric semidiameter 16'15.5" and horizontal parallax 59'27.7" at latitude 50 05'07.8",
   * sidereal time 209 46'07.9" has a topocentric semidiameter of 16'25.5", longitude 181 48'05.0",
   * latitude +1 29'07.1". Tolerance: the last printed digit; he uses the ellipsoid of 1976, whose
   * radius is 3 m larger.
   */
  @Test
  void augmentsTheMoonAsInMeeusChapter40() {
    double distanceKm = EARTH_RADIUS_KM / Math.sin(Math.toRadians(dms(0, 59, 27.7)));
    Vector3D ecliptical = Directions.of(dms(181, 46, 22.5), dms(2, 17, 26.2), distanceKm);
    Rotation toEquator =
        new Rotation(
            Vector3D.PLUS_I, Math.toRadians(dms(23, 28, 0.8)), RotationConvention.VECTOR_OPERATOR);
    Rotation toEarth =
        new Rotation(
            Vector3D.PLUS_K, Math.toRadians(dms(209, 46, 7.9)), RotationConvention.FRAME_TRANSFORM);
    Horizon horizon = Horizon.of(new Site(dms(50, 5, 7.8), 0, 0));
    Vector3D toMoon = horizon.toBody(toEarth.applyTo(toEquator.applyTo(ecliptical)));

    double radiusKm = distanceKm * Math.sin(Math.toRadians(dms(0, 16, 15.5)));
    double semidiameterDeg = Math.toDegrees(Math.asin(radiusKm / toMoon.getNorm()));
    Vector3D seen = toEquator.applyInverseTo(toEarth.applyInverseTo(toMoon));

    assertThat(semidiameterDeg).isCloseTo(dms(0, 16, 25.5), within(0.05 / 3600));
    assertThat(Math.toDegrees(seen.getAlpha()) + 360)
        .isCloseTo(dms(181, 48, 5.0), within(0.1 / 3600));
    assertThat(Math.toDegrees(seen.getDelta())).isCloseTo(dms(1, 29, 7.1), within(0.1 / 3600));
  }

  /** Example 15.a, p. 103: apparent sidereal time of 1988 March 20, 0h UT: 11h 50m 58.1s. */
  @Test
  void keepsTheSiderealTimeOfMeeusExample15a() {
    double hours =
        Math.toDegrees(
                rotation.at(times.date(Instant.parse("1988-03-20T00:00:00Z"))).siderealTimeRad())
            / 15;
    assertThat(Math.IEEEremainder(hours - dms(11, 50, 58.1), 24)).isCloseTo(0, within(0.1 / 3600));
  }

  /**
   * Example 15.a: Venus over Boston on that day rises at 0.51766, is highest at 0.81980 and sets at
   * 0.12130 of the day, the altitude of rise and set being -0.5667 degrees. Tolerance: half a unit
   * of the last digit is 0.4 s, in which a body rises by 0.0014 degrees.
   */
  @Test
  void findsVenusWhereMeeusExample15aDoes() {
    Horizon boston = Horizon.of(new Site(dms(42, 20, 0), -dms(71, 5, 0), 0));
    assertThat(boston.altitudeDeg(venus(0.51766))).isCloseTo(-0.5667, within(0.0014));
    assertThat(boston.altitudeDeg(venus(0.12130))).isCloseTo(-0.5667, within(0.0014));
    assertThat(boston.azimuthDeg(venus(0.81980))).isCloseTo(180, within(0.01));
  }

  /** Venus by interpolation between 1988 March 19, 20 and 21, 0h TD, as in the example; dT 56 s. */
  private Vector3D venus(double partOfDay) {
    double n = partOfDay + 56.0 / 86400;
    double rightAscensionDeg =
        15 * interpolated(n, dms(2, 42, 43.25), dms(2, 46, 55.51), dms(2, 51, 7.69));
    double declinationDeg = interpolated(n, dms(18, 2, 51.4), dms(18, 26, 27.3), dms(18, 49, 38.7));
    Instant at =
        Instant.parse("1988-03-20T00:00:00Z").plusMillis(Math.round(partOfDay * 86_400_000));
    Rotation toEarth =
        new Rotation(
            Vector3D.PLUS_K,
            rotation.at(times.date(at)).siderealTimeRad(),
            RotationConvention.FRAME_TRANSFORM);
    return toEarth.applyTo(Directions.of(rightAscensionDeg, declinationDeg, 1));
  }

  private static double interpolated(double n, double before, double here, double after) {
    double a = here - before;
    double b = after - here;
    return here + n / 2 * (a + b + n * (b - a));
  }
}

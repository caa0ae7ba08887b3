package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.orekit.frames.Frame;
import org.orekit.frames.Frames;
import org.orekit.time.AbsoluteDate;
import org.orekit.time.TimeVectorFunction;
import org.orekit.utils.Constants;
import org.orekit.utils.IERSConventions;

/**
 * The Earth's attitude, put together here, against the frames that Orekit 13.1 puts together
 * itself.
 */
class EarthRotationReferenceTest {

  private static final double ARCSECOND = Math.toRadians(1.0 / 3600);

  private final Times times = new Times();
  private final EarthRotation rotation = new EarthRotation(times.scales());

  /** Same conventions; Orekit interpolates nutation between nodes, hence a milliarcsecond. */
  @Test
  void agreesWithTheFramesOf1996() {
    assertThat(farthest(IERSConventions.IERS_1996)).isLessThan(0.001 * ARCSECOND);
  }

  /** Between the noons too, over the Moon's month and the half year, and where the noons end. */
  @Test
  void interpolatesNutationAsTheSumsAreTold() {
    Nutation nutation = new Nutation(IERSConventions.IERS_1996, times.scales());
    TimeVectorFunction sums = IERSConventions.IERS_1996.getNutationFunction(times.scales());
    for (int year : new int[] {1891, 1979, 2000, 2026, 2060, 2108, 2200}) {
      AbsoluteDate start = times.date(Instant.parse(year + "-01-01T00:00:00Z"));
      for (double day = 0; day < 400; day += 0.37) {
        AbsoluteDate date = start.shiftedBy(day * Constants.JULIAN_DAY);
        assertThat(nutation.at(date))
            .containsExactly(sums.value(date), within(0.00001 * ARCSECOND));
      }
    }
  }

  /** Where the equation of the equinoxes gained two terms, the polynomials pass over the step. */
  @Test
  void passesOverTheStepOf1997() {
    Nutation nutation = new Nutation(IERSConventions.IERS_1996, times.scales());
    TimeVectorFunction sums = IERSConventions.IERS_1996.getNutationFunction(times.scales());
    AbsoluteDate start = times.date(Instant.parse("1997-02-20T00:00:00Z"));
    for (double day = 0; day < 14; day += 0.01) {
      AbsoluteDate date = start.shiftedBy(day * Constants.JULIAN_DAY);
      assertThat(nutation.at(date)).containsExactly(sums.value(date), within(0.003 * ARCSECOND));
    }
  }

  /** The conventions of 2010 know precession better: under 0.1 arcseconds before 2060. */
  @Test
  void staysNearTheFramesOf2010() {
    assertThat(farthest(IERSConventions.IERS_2010)).isLessThan(0.2 * ARCSECOND);
  }

  /** The table for searches keeps to the full computation, at noon, at midnight and between. */
  @Test
  void interpolatesWithinAHundredthOfAnArcsecond() {
    double start = times.tdbDays(Instant.parse("2024-02-10T03:00:00Z"));
    AttitudeTable table = new AttitudeTable(rotation, times, start, start + 60);
    Vector3D moonwards = new Vector3D(0.3, -0.8, 0.52).normalize();
    for (double day = 0; day <= 60; day += 0.173) {
      Vector3D exact = rotation.at(times.date(start + day)).toEarth().applyTo(moonwards);
      assertThat(Vector3D.angle(exact, table.toEarth(moonwards, start + day)))
          .isLessThan(0.01 * ARCSECOND);
    }
  }

  private double farthest(IERSConventions conventions) {
    Frames frames = Frames.of(times.scales(), Frame::getRoot);
    Frame earth = frames.getGTOD(conventions, true);
    double farthest = 0;
    for (int year = 1980; year < 2060; year += 7) {
      Instant at = Instant.parse(year + "-05-17T05:23:11Z");
      AbsoluteDate date = times.date(at);
      Rotation theirs = Frame.getRoot().getStaticTransformTo(earth, date).getRotation();
      Rotation ours = rotation.at(date).toEarth();
      farthest = Math.max(farthest, Rotation.distance(theirs, ours));
    }
    return farthest;
  }
}

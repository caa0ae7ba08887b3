package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

class ParallaxLawReferenceTest {

  private static final Site MADRID = new Site(40.4168, -3.7038, 667);

  /** Held to the full reduction on the ellipsoid of the sky package; a ten-thousandth percent. */
  @Test
  void agreesWithTheDistanceFromTheSite() {
    for (Site site : List.of(MADRID, new Site(-77.85, 166.7, 10), new Site(0, 0, 4000))) {
      List<Observation> observations = hourly(site);
      ParallaxLaw law = ParallaxLaw.of(observations, site, AltitudeSource.COMPUTED);
      for (int i = 0; i < observations.size(); i++) {
        MoonSight sight = observations.get(i).sight();
        double parallax = ParallaxLaw.EQUATORIAL_RADIUS_KM / sight.geocentricDistanceKm();
        assertThat(law.lnGain(i, parallax))
            .isCloseTo(
                Math.log(sight.geocentricDistanceKm() / sight.topocentricDistanceKm()),
                within(1e-6));
      }
    }
  }

  @Test
  void slopeIsTheDerivative() {
    List<Observation> observations = hourly(MADRID);
    ParallaxLaw law = ParallaxLaw.of(observations, MADRID, AltitudeSource.COMPUTED);
    double step = 1e-6;
    for (int i = 0; i < observations.size(); i++) {
      double slope = (law.lnGain(i, 0.02 + step) - law.lnGain(i, 0.02 - step)) / (2 * step);
      assertThat(law.slope(i, 0.02)).isCloseTo(slope, within(1e-6));
    }
  }

  /**
   * Navigators' rule of augmentation (common practice, no source): add 0.1 arcmin to the Moon's
   * semidiameter at altitudes of 10 to 30 degrees, 0.2 to 60, 0.3 above; to a tenth.
   */
  @ParameterizedTest
  @CsvSource({"20, 0.1", "45, 0.2", "75, 0.3"})
  void agreesWithTheNavigatorsAugmentation(double altitudeDeg, double arcmin) {
    Site pole = new Site(90, 0, 0);
    MoonSight near = SkyFixture.sky().moonAt(Instant.parse("2024-03-10T07:00:00Z"), MADRID);
    MoonSight sight =
        new MoonSight(
            near.at(),
            384_400,
            384_400,
            31.1,
            31.1,
            altitudeDeg,
            altitudeDeg,
            180,
            1,
            180,
            -20,
            0,
            0);
    ParallaxLaw law = ParallaxLaw.of(List.of(observation(sight)), pole, AltitudeSource.COMPUTED);
    assertThat(15.55 * Math.expm1(law.lnGain(0, 1 / 60.27))).isCloseTo(arcmin, within(0.05));
  }

  private static List<Observation> hourly(Site site) {
    List<Observation> observations = new ArrayList<>();
    for (int hour = 0; hour < 24 * 28; hour += 3) {
      observations.add(
          observation(
              SkyFixture.sky()
                  .moonAt(
                      Instant.parse("2024-03-01T00:00:00Z").plus(Duration.ofHours(hour)), site)));
    }
    return observations;
  }

  private static Observation observation(MoonSight sight) {
    return new Observation(
        sight.at(),
        Axis.HORIZONTAL,
        sight.horizontalDiameterArcmin(),
        0.001,
        sight,
        0,
        Sighted.NONE);
  }
}

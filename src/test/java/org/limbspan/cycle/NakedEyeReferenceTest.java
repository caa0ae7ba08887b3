package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.random.RandomDataGenerator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

/**
 * The scale of what can be had without a lens: K. Krisciunas, Am. J. Phys. 78, 834 (2010), preprint
 * arXiv:1001.1432: 64 sizes of some 0.7 arcmin over 14 lunations, eccentricity 0.041 +- 0.004
 * (preprint), 0.039 +- 0.006 (journal); from memory: period 27.24 +- 0.29 d. His table was not to
 * be had: readings of the same number and scatter are simulated here.
 *
 * <p>His single sinusoid leaves evection in; here it is fitted, so that the value comes out at the
 * Moon's 0.0544 and the uncertainty, from the same readings, is of the same size as his.
 */
class NakedEyeReferenceTest {

  private static final Site SITE = new Site(30.6, -96.3, 90);
  private static final double SCATTER_ARCMIN = 0.7;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void sixtyFourSizesGiveTheEccentricityToFourThousandths(long seed) {
    SelfReliantCycle cycle =
        SelfReliantEstimator.estimate(sizes(seed), SITE, AltitudeSource.COMPUTED).orElseThrow();
    assertThat(cycle.eccentricity().uncertainty()).isCloseTo(0.0045, within(0.0015));
    assertThat(Math.abs(cycle.eccentricity().sigmasFrom(0.0544))).isLessThan(3);
    assertThat(cycle.periodDays().uncertainty()).isLessThan(0.29);
    assertThat(Math.abs(cycle.periodDays().sigmasFrom(27.55455))).isLessThan(3);
  }

  private static List<Observation> sizes(long seed) {
    RandomDataGenerator random = new RandomDataGenerator(seed);
    Instant start = Instant.parse("2009-04-20T00:00:00Z");
    List<Observation> sizes = new ArrayList<>();
    while (sizes.size() < 64) {
      long minutes = random.nextLong(0, Math.round(14 * 29.53 * 1440));
      MoonSight sight = SkyFixture.sky().moonAt(start.plus(Duration.ofMinutes(minutes)), SITE);
      if (sight.altitudeDeg() > 15 && sight.illuminatedFraction() > 0.2) {
        double size = sight.horizontalDiameterArcmin() + random.nextNormal(0, SCATTER_ARCMIN);
        sizes.add(
            new Observation(
                sight.at(), Axis.HORIZONTAL, size, SCATTER_ARCMIN / size, sight, 0, Sighted.NONE));
      }
    }
    return sizes;
  }
}

package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.hipparchus.stat.descriptive.StreamingStatistics;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.SkyFixture;

/** The scale of what others found, see {@link PublishedExperiments}. */
class PublishedExperimentsReferenceTest {

  /**
   * Krisciunas reports 0.041 +- 0.004 in the preprint and 0.039 +- 0.006 in the journal: an
   * uncertainty of that size is what 64 sizes of 0.7 arcmin carry, by his way and by ours.
   */
  @Test
  void sixtyFourSizesByEyeGiveTheEccentricityToSomeThousandths() {
    StreamingStatistics sinusoid = new StreamingStatistics();
    StreamingStatistics own = new StreamingStatistics();
    StreamingStatistics stated = new StreamingStatistics();
    for (long seed = 1; seed <= 40; seed++) {
      var sizes = new PublishedExperiments(seed).nakedEye();
      sinusoid.addValue(PublishedExperiments.oneSinusoid(sizes));
      Estimate found =
          SelfReliantEstimator.estimate(sizes, PublishedExperiments.TEXAS, AltitudeSource.COMPUTED)
              .orElseThrow()
              .eccentricity();
      own.addValue(found.value());
      stated.addValue(found.uncertainty());
    }
    assertThat(sinusoid.getStandardDeviation()).isCloseTo(0.004, within(0.002));
    assertThat(own.getStandardDeviation()).isCloseTo(0.004, within(0.002));
    assertThat(stated.getMean()).isCloseTo(0.0045, within(0.0015));
    assertThat(own.getMean()).isCloseTo(0.0544, within(3 * 0.0045 / Math.sqrt(40)));
  }

  /**
   * Zuluaga, Figueroa and Ferrin report the distance to about 3 percent from one observer in one
   * night.
   */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void oneNightOfPhotographsGivesTheDistanceToSomePercent(long seed) {
    var photographs = new PublishedExperiments(seed).oneNight();
    MoonDistance found =
        NightDistanceEstimator.estimate(
                photographs,
                PublishedExperiments.ANTIOQUIA,
                AltitudeSource.COMPUTED,
                MonthPart.COMPUTED)
            .orElseThrow();
    double computed =
        6378.137
            / photographs.stream()
                .mapToDouble(o -> o.sight().geocentricDistanceKm())
                .average()
                .orElseThrow();
    Estimate parallax = found.parallax();
    assertThat(parallax.uncertainty() / parallax.value()).isBetween(0.01, 0.06);
    assertThat(Math.abs(parallax.sigmasFrom(computed))).isLessThan(3);
  }

  /**
   * Navigators add to the Moon's semidiameter 0.1 arcmin at altitudes of 10 to 30 degrees, 0.2 at
   * 30 to 60 and 0.3 above 60 (common practice, no source; figures to a tenth).
   */
  @ParameterizedTest
  @CsvSource({"20, 0.1", "45, 0.2", "80, 0.3"})
  void seesTheAugmentationThatNavigatorsAdd(double altitudeDeg, double arcmin) {
    Instant at = Instant.parse("2024-03-20T00:00:00Z");
    MoonSight best = SkyFixture.sky().moonAt(at, PublishedExperiments.ANTIOQUIA);
    for (int hour = 0; hour < 24 * 28 * 6; hour++) {
      MoonSight sight =
          SkyFixture.sky().moonAt(at.plusSeconds(600L * hour), PublishedExperiments.ANTIOQUIA);
      best =
          Math.abs(sight.altitudeDeg() - altitudeDeg) < Math.abs(best.altitudeDeg() - altitudeDeg)
              ? sight
              : best;
    }
    double geocentric = 2 * Math.toDegrees(Math.asin(1737.4 / best.geocentricDistanceKm())) * 60;
    assertThat((best.horizontalDiameterArcmin() - geocentric) / 2).isCloseTo(arcmin, within(0.05));
  }
}

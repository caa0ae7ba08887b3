package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.stat.descriptive.moment.Mean;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.SkyFixture;

/**
 * Rigs without a fault, written by an independent simulator (reference/readings/README.md): what is
 * estimated must lie about the truth as its uncertainty claims.
 */
class CleanRigsReferenceTest {

  /** Meeus, Astronomical Algorithms, 2nd ed., rate of the Moon's mean anomaly; from memory. */
  private static final double MEAN_MONTH_DAYS = 27.55455;

  /** Of ln(1/distance): least-squares fit of the known arguments to DE405, 1980 to 2060. */
  private static final double ANOMALISTIC_AMPLITUDE = 0.05442;

  /** exp(mean ln(distance)) of DE405 over 6378.137 km, 1985 to 2039. */
  private static final double MEAN_EARTH_RADII = 60.267;

  /** 0.15 mm of 297 mm, the same sheet at every calibration. */
  private static final double SHEET_UNCERTAINTY = 0.15 / 297;

  @ParameterizedTest
  @ValueSource(strings = {"clean-pairs", "clean-hourly", "clean-triples-3y"})
  void slopeIsOneWithinTwoUncertainties(String folder) {
    RigFixture rig = RigFixture.of(folder);
    SwingSlope swing = SlopeEstimator.estimate(rig.observations(), rig.site());
    assertThat(Math.abs(swing.slope().orElseThrow().sigmasFrom(1))).isLessThan(2);
    assertThat(swing.slope().orElseThrow().uncertainty()).isLessThan(0.003);
    assertThat(swing.verdict()).isEqualTo(Verdict.AGREES);
  }

  @ParameterizedTest
  @ValueSource(strings = {"clean-pairs", "clean-hourly", "clean-triples-3y"})
  void nightRatioIsAsPredictedWithinTwoUncertainties(String folder) {
    RigFixture rig = RigFixture.of(folder);
    NightRatios nights = NightRatioEstimator.estimate(rig.observations(), rig.site());
    assertThat(Math.abs(nights.slope().orElseThrow().sigmasFrom(1))).isLessThan(2);
    assertThat(nights.slope().orElseThrow().uncertainty()).isLessThan(0.03);
    assertThat(nights.verdict()).isEqualTo(Verdict.AGREES);
  }

  @ParameterizedTest
  @ValueSource(strings = {"clean-pairs", "clean-hourly", "clean-triples-3y"})
  void everyMonthAgrees(String folder) {
    RigFixture rig = RigFixture.of(folder);
    List<MonthSwing> months =
        MonthEstimator.estimate(rig.observations(), rig.site(), apsidesAround(rig));
    assertThat(months.stream().mapToInt(MonthSwing::readingCount).sum())
        .isEqualTo(rig.observations().size());
    List<MonthSwing> judged = months.stream().filter(m -> m.verdict() != Verdict.TOO_FEW).toList();
    assertThat(judged).hasSizeGreaterThan(8);
    assertThat(judged).allMatch(m -> m.verdict() == Verdict.AGREES);
  }

  @ParameterizedTest
  @ValueSource(strings = {"clean-pairs", "clean-hourly", "clean-triples-3y"})
  void readingsAloneGivePeriodEccentricityAndSwing(String folder) {
    RigFixture rig = RigFixture.of(folder);
    SelfReliantCycle cycle =
        SelfReliantEstimator.estimate(rig.observations(), rig.site(), AltitudeSource.COMPUTED)
            .orElseThrow();
    assertThat(Math.abs(cycle.periodDays().sigmasFrom(MEAN_MONTH_DAYS))).isLessThan(3);
    assertThat(cycle.periodDays().uncertainty()).isLessThan(0.009);
    assertThat(Math.abs(cycle.eccentricity().sigmasFrom(ANOMALISTIC_AMPLITUDE))).isLessThan(3);
    assertThat(cycle.eccentricity().uncertainty()).isLessThan(0.0004);
    double[] swings = swings(rig);
    assertThat(cycle.monthCount()).isEqualTo(swings.length);
    double predicted = 100 * Math.expm1(new Mean().evaluate(swings));
    assertThat(Math.abs(cycle.swingPercent().sigmasFrom(predicted))).isLessThan(3);
  }

  @ParameterizedTest
  @EnumSource(AltitudeSource.class)
  void distanceComesOutInEarthRadii(AltitudeSource altitudes) {
    RigFixture rig = RigFixture.of("clean-triples-3y");
    SelfReliantCycle cycle =
        SelfReliantEstimator.estimate(rig.observations(), rig.site(), altitudes).orElseThrow();
    MoonDistance nights =
        NightDistanceEstimator.estimate(rig.observations(), rig.site(), altitudes, cycle.curve())
            .orElseThrow();
    for (MoonDistance distance : List.of(cycle.distance(), nights)) {
      Estimate earthRadii = distance.earthRadii().orElseThrow();
      assertThat(Math.abs(distance.parallax().sigmasFrom(1 / MEAN_EARTH_RADII))).isLessThan(3);
      assertThat(earthRadii.uncertainty()).isLessThan(1.2);
      assertThat(earthRadii.value())
          .isBetween(distance.leastEarthRadii(), distance.mostEarthRadii().orElseThrow());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"clean-pairs", "clean-hourly", "clean-triples-3y", "declared-change"})
  void diameterTimesDistanceIsTheMoonsDiameter(String folder) {
    RigFixture rig = RigFixture.of(folder);
    List<SetupScale> scales =
        IntStream.range(0, rig.scaleUncertainty().size())
            .mapToObj(setup -> new SetupScale(setup, rig.scaleUncertainty().get(setup)))
            .toList();
    MoonDiameter moon =
        MoonDiameterEstimator.estimate(rig.observations(), rig.site(), scales, SHEET_UNCERTAINTY)
            .orElseThrow();
    assertThat(Math.abs(moon.diameterKm().sigmasFrom(3474.8))).isLessThan(3);
    assertThat(moon.diameterKm().uncertainty()).isLessThan(4);
    assertThat(moon.setups()).hasSize(scales.size());
  }

  private static List<Apsis> apsidesAround(RigFixture rig) {
    Instant first = rig.observations().get(0).takenAt();
    Instant last = rig.observations().get(rig.observations().size() - 1).takenAt();
    return SkyFixture.sky()
        .apsides(first.minus(Duration.ofDays(29)), last.plus(Duration.ofDays(29)));
  }

  private static double[] swings(RigFixture rig) {
    return MonthEstimator.estimate(rig.observations(), rig.site(), apsidesAround(rig)).stream()
        .mapToDouble(month -> Math.log1p(month.predictedSwingPercent() / 100))
        .toArray();
  }
}

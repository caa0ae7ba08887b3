package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

/** Long histories: what is remembered changes no bit, and what is left out no figure. */
class MilestonePropertyTest {

  private static final RigSimulator RIG = new RigSimulator(7);
  private static final Site SITE = RIG.site();
  private static final List<Observation> ALL =
      twoSetups(RIG.readings(7, 5, 0.8, sight -> sight.diameterArcmin(Axis.HORIZONTAL)));
  private static final List<Apsis> APSIDES =
      SkyFixture.sky()
          .apsides(
              ALL.get(0).takenAt().minus(Duration.ofDays(29)),
              ALL.get(ALL.size() - 1).takenAt().plus(Duration.ofDays(29)));

  /** Everything that the estimators say of a series. */
  private record Said(
      SwingSlope slope,
      List<MonthSwing> months,
      NightRatios nights,
      Optional<MoonDiameter> diameter,
      String cycle,
      Optional<MoonDistance> distance,
      List<HypothesisComparison> hypotheses) {

    static Said of(Series series, RunningSelfReliantEstimator alone) {
      Optional<SelfReliantCycle> cycle = alone.estimate(series, SITE, AltitudeSource.COMPUTED);
      return new Said(
          SlopeEstimator.estimate(series),
          MonthEstimator.estimate(series, APSIDES),
          NightRatioEstimator.estimate(series, SITE),
          MoonDiameterEstimator.estimate(
              series, List.of(new SetupScale(0, 0.001), new SetupScale(1, 0.002)), 0.001),
          cycle.map(MilestonePropertyTest::inWords).orElse("none"),
          cycle.flatMap(
              c ->
                  NightDistanceEstimator.estimate(
                      series, SITE, AltitudeSource.COMPUTED, c.curve())),
          HypothesisEstimator.compare(series, SITE, NearMoonAssumptions.ALL));
    }
  }

  /** All figures to the last digit; the curve by a value of it. */
  private static String inWords(SelfReliantCycle c) {
    return List.of(
            c.periodDays(),
            c.eccentricity(),
            c.swingPercent(),
            c.apsidalEccentricity(),
            c.monthCount(),
            c.distance(),
            c.noise(),
            c.curve().lnSize(ALL.get(0).takenAt()))
        .toString();
  }

  @Test
  void saysTheSameBitByBitWhateverWasRememberedBefore() {
    Random random = new Random(3);
    CycleMemory memory = new CycleMemory();
    RunningSelfReliantEstimator alone = new RunningSelfReliantEstimator();
    List<Observation> known = new ArrayList<>(ALL.subList(0, 1018));
    int next = known.size();
    for (int step = 0; step < 16; step++) {
      switch (step % 8) {
        case 3 -> known.remove(random.nextInt(known.size())); // taken back
        case 4 -> known.set(3 + step, corrected(known.get(3 + step)));
        case 5 -> known.add(0, known.get(known.size() - 1)); // said twice, and out of order
        case 6 -> known.remove(known.size() - 1);
        case 7 -> {
          known.add(ALL.get(next + 5)); // one that others come late for
          known.addAll(ALL.subList(next, next + 5));
          next += 6;
        }
        default -> {
          int more = 1 + random.nextInt(step < 8 ? 3 : 50);
          known.addAll(ALL.subList(next, next + more));
          next += more;
        }
      }
      Said on = Said.of(Series.of(known, SITE, memory), alone);
      Said anew = Said.of(Series.of(known, SITE), new RunningSelfReliantEstimator());
      assertThat(on).as("step %d, %d readings", step, known.size()).isEqualTo(anew);
    }
    assertThat(known.size()).isGreaterThan(Milestone.LEAST + 64);
  }

  @Test
  void readingsOfTheRestCountAsTheyWouldWithAllLookedAtAtOnce() {
    for (int size : new int[] {1039, 1150, 1151, 1327}) {
      Series series = Series.of(ALL.subList(0, size), SITE);
      assertThat(series.rest().size()).isBetween(1, size / 32);
      assertClose(
          SlopeEstimator.estimate(series).slope().orElseThrow(),
          RobustRegression.fit(SlopeEstimator.rows(series), NightPart.RANDOM, new double[] {1})
              .orElseThrow()
              .coefficient(0));
      RobustRegression.Fit atOnce =
          LunarFit.ofAll(series, SITE, AltitudeSource.COMPUTED, LunarFit.Beginning::search)
              .orElseThrow()
              .fit();
      RobustRegression.Fit parted =
          LunarFit.of(series, SITE, AltitudeSource.COMPUTED).orElseThrow().result().fit();
      for (int j = 0; j < atOnce.coefficients().getDimension(); j++) {
        assertClose(parted.coefficient(j), atOnce.coefficient(j));
      }
    }
  }

  /** Against all readings at once, evaluated where the heights of the integral are many. */
  @Test
  void likelihoodsOfTheRestAddToThoseOfThePast() {
    for (int size : new int[] {1039, 1151, 1327}) {
      Series series = Series.of(ALL.subList(0, size), SITE);
      PassLikelihood all = PassLikelihood.of(series);
      double[] month =
          series.observations().stream()
              .mapToDouble(o -> -Math.log(o.sight().geocentricDistanceKm()))
              .toArray();
      for (double heightKm : new double[] {1500, 4828, 20_000}) {
        double[] y = series.lnUnrefracted();
        for (int i = 0; i < y.length; i++) {
          y[i] += Math.log(NearMoon.distanceKm(series.get(i).sight(), SITE, heightKm));
        }
        assertClose(parted(series, y, NONE), all.evaluate(y));
        assertClose(parted(series, y, month), all.with(month).evaluate(y));
      }
      double[] orbiting = series.lnObserved();
      for (int i = 0; i < orbiting.length; i++) {
        orbiting[i] -= Math.log(series.get(i).predictedArcmin());
      }
      assertClose(parted(series, orbiting, NONE), all.evaluate(orbiting));
    }
  }

  private static final double[] NONE = {};

  private static PassLikelihood.Outcome parted(Series series, double[] y, double[] column) {
    Series past = series.past();
    int cut = past.size();
    PassLikelihood of = PassLikelihood.of(past);
    PassLikelihood more = PassLikelihood.of(series.rest(), past.typicalStated());
    if (column.length > 0) {
      of = of.with(Arrays.copyOf(column, cut));
    }
    KnownLikelihood known = of.know(Arrays.copyOf(y, cut));
    if (column.length > 0) {
      more = more.with(Arrays.copyOfRange(column, cut, column.length), known.centres());
    }
    return more.evaluate(Arrays.copyOfRange(y, cut, y.length), known);
  }

  private static void assertClose(PassLikelihood.Outcome parted, PassLikelihood.Outcome atOnce) {
    assertThat(parted.logLikelihood()).isCloseTo(atOnce.logLikelihood(), within(0.01));
    assertThat(parted.logEvidence()).isCloseTo(atOnce.logEvidence(), within(0.01));
    assertThat(parted.factor()).isCloseTo(atOnce.factor(), withinPercentage(0.01));
    parted.coefficient().ifPresent(c -> assertClose(c, atOnce.coefficient().orElseThrow()));
  }

  /** A setup that began after the milestone, with a scale that nothing before says anything of. */
  @Test
  void takesUpANewSetupInTheRest() {
    Series series = Series.of(ALL.subList(0, 1039), SITE);
    int from = 1039 - series.rest().size() / 2;
    List<Observation> changed = new ArrayList<>(ALL.subList(0, from));
    ALL.subList(from, 1039).forEach(o -> changed.add(RigFixture.with(o, 5, 1.21)));
    List<Observation> unscaled = new ArrayList<>(ALL.subList(0, from));
    ALL.subList(from, 1039).forEach(o -> unscaled.add(RigFixture.with(o, 5, 1)));
    Estimate slope = SlopeEstimator.estimate(changed, SITE).slope().orElseThrow();
    assertThat(slope.value())
        .isCloseTo(
            SlopeEstimator.estimate(unscaled, SITE).slope().orElseThrow().value(), within(1e-6));
    assertClose(
        slope,
        RobustRegression.fit(
                SlopeEstimator.rows(Series.of(changed, SITE)), NightPart.RANDOM, new double[] {1})
            .orElseThrow()
            .coefficient(0));
    assertThat(
            HypothesisEstimator.compare(changed, SITE, NearMoonAssumptions.USUAL)
                .log10BayesFactor())
        .isCloseTo(
            HypothesisEstimator.compare(unscaled, SITE, NearMoonAssumptions.USUAL)
                .log10BayesFactor(),
            within(1e-3));
  }

  @Test
  void milestonesStayForAPowerOfTwoOfReadings() {
    int last = 0;
    int moves = 0;
    for (int size = Milestone.LEAST; size < Milestone.LEAST + 160; size++) {
      int past = Milestone.pastOf(Series.of(ALL.subList(0, size), SITE));
      assertThat(past).isBetween(size - size / Milestone.LEAST * 32, size - 1);
      moves += past == last ? 0 : 1;
      last = past;
    }
    assertThat(moves).isBetween(8, 11);
    assertThat(Milestone.pastOf(Series.of(ALL.subList(0, Milestone.LEAST - 1), SITE)))
        .isEqualTo(Milestone.LEAST - 1);
    assertThat(Milestone.pastOf(Series.of(List.of(), SITE))).isZero();
  }

  /** A pass of a thousand readings cannot be parted. */
  @Test
  void aSingleNightHasNoPast() {
    Observation one = ALL.get(0);
    List<Observation> night = new ArrayList<>();
    for (int i = 0; i < Milestone.LEAST + 10; i++) {
      night.add(RigFixture.with(one, 0, 1 + 1e-6 * i));
    }
    Series series = Series.of(night, SITE);
    assertThat(series.hasRest()).isFalse();
    assertThat(series.past()).isSameAs(series);
  }

  /** By a twentieth of the uncertainty, and two percent of it. */
  private static void assertClose(Estimate parted, Estimate atOnce) {
    double u = atOnce.uncertainty();
    assertThat(parted.value()).isCloseTo(atOnce.value(), within(0.05 * u));
    assertThat(parted.uncertainty()).isCloseTo(u, within(0.02 * u));
  }

  private static List<Observation> twoSetups(List<Observation> observations) {
    Instant change = observations.get(700).takenAt();
    return observations.stream()
        .map(o -> RigFixture.with(o, o.takenAt().isBefore(change) ? 0 : 1, 1))
        .toList();
  }

  private static Observation corrected(Observation o) {
    return RigFixture.with(o, o.setup(), 1.001);
  }
}

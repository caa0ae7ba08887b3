package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.Site;

/** What must hold for any readings: seeded, on one simulated rig. */
class EstimatorsPropertyTest {

  private final RigSimulator rig = new RigSimulator(42);
  private final Site site = rig.site();
  private final List<Observation> observations = rig.pairs(1);

  @Test
  void orderOfReadingsChangesNothing() {
    List<Observation> shuffled = new ArrayList<>(observations);
    Collections.shuffle(shuffled, new Random(1));
    assertThat(SlopeEstimator.estimate(shuffled, site))
        .isEqualTo(SlopeEstimator.estimate(observations, site));
    assertThat(NightRatioEstimator.estimate(shuffled, site))
        .isEqualTo(NightRatioEstimator.estimate(observations, site));
    assertThat(HypothesisEstimator.compare(shuffled, site, NearMoonAssumptions.USUAL))
        .isEqualTo(HypothesisEstimator.compare(observations, site, NearMoonAssumptions.USUAL));
    assertThat(cycle(shuffled).periodDays()).isEqualTo(cycle(observations).periodDays());
    assertThat(cycle(shuffled).swingPercent()).isEqualTo(cycle(observations).swingPercent());
  }

  @Test
  void scaleOfASetupChangesNothing() {
    List<Observation> other = new ArrayList<>();
    List<Observation> rescaled = new ArrayList<>();
    for (int i = 0; i < observations.size(); i++) {
      int setup = i < 40 ? 0 : 1;
      other.add(RigFixture.with(observations.get(i), setup, 1));
      rescaled.add(RigFixture.with(observations.get(i), setup, setup == 0 ? 1 : 1.37));
    }
    Estimate slope = SlopeEstimator.estimate(other, site).slope().orElseThrow();
    Estimate ratio = NightRatioEstimator.estimate(other, site).slope().orElseThrow();
    assertThat(SlopeEstimator.estimate(rescaled, site).slope().orElseThrow().value())
        .isCloseTo(slope.value(), within(1e-6));
    assertThat(NightRatioEstimator.estimate(rescaled, site).slope().orElseThrow().value())
        .isCloseTo(ratio.value(), within(1e-6));
    assertThat(cycle(rescaled).periodDays().value())
        .isCloseTo(cycle(other).periodDays().value(), within(1e-5));
    assertThat(
            HypothesisEstimator.compare(rescaled, site, NearMoonAssumptions.USUAL)
                .log10BayesFactor())
        .isCloseTo(
            HypothesisEstimator.compare(other, site, NearMoonAssumptions.USUAL).log10BayesFactor(),
            within(1e-3));
  }

  /** The year of most readings changes on the way, and stays for long. */
  @Test
  void goesOnAsIfItHadBegunAnew() {
    List<Observation> years = rig.pairs(3);
    RunningSelfReliantEstimator running = new RunningSelfReliantEstimator();
    for (int n = 5; n <= years.size(); n += n < 140 ? 45 : 1 + years.size() / 9) {
      List<Observation> known = years.subList(0, n);
      SelfReliantCycle anew =
          SelfReliantEstimator.estimate(known, site, AltitudeSource.COMPUTED).orElse(null);
      SelfReliantCycle on = running.estimate(known, site, AltitudeSource.COMPUTED).orElse(null);
      assertThat(on).usingRecursiveComparison().ignoringFields("curve").isEqualTo(anew);
    }
  }

  @Test
  void fewReadingsGiveNoAnswerRatherThanAWrongOne() {
    for (int size = 0; size < 8; size++) {
      List<Observation> few = observations.subList(0, size);
      assertThat(SlopeEstimator.estimate(few, site).readingCount()).isEqualTo(size);
      assertThat(SelfReliantEstimator.estimate(few, site, AltitudeSource.COMPUTED)).isEmpty();
      assertThat(SelfReliantEstimator.estimate(few, site, AltitudeSource.SIGHTED)).isEmpty();
      assertThat(HypothesisEstimator.compare(few, site, NearMoonAssumptions.USUAL).readingCount())
          .isEqualTo(size);
    }
    assertThat(SlopeEstimator.estimate(List.of(), site).slope()).isEmpty();
    assertThat(SlopeEstimator.estimate(observations.subList(0, 1), site).verdict())
        .isEqualTo(Verdict.TOO_FEW);
    assertThat(NightRatioEstimator.estimate(List.of(), site).pairs()).isEmpty();
    assertThat(MonthEstimator.estimate(List.of(), site, List.of())).isEmpty();
    assertThat(MoonDiameterEstimator.estimate(List.of(), site, List.of(), 0)).isEmpty();
    assertThat(
            NightDistanceEstimator.estimate(
                List.of(), site, AltitudeSource.COMPUTED, MonthPart.COMPUTED))
        .isEmpty();
    assertThat(
            HypothesisEstimator.compare(List.of(), site, NearMoonAssumptions.USUAL)
                .log10BayesFactor())
        .isZero();
  }

  @Test
  void oneGrossSlipMovesNothing() {
    List<Observation> slipped = new ArrayList<>(observations);
    slipped.set(30, RigFixture.with(observations.get(30), 0, 10));
    Estimate slope = SlopeEstimator.estimate(observations, site).slope().orElseThrow();
    assertThat(SlopeEstimator.estimate(slipped, site).slope().orElseThrow().value())
        .isCloseTo(slope.value(), within(slope.uncertainty()));
    Estimate period = cycle(observations).periodDays();
    assertThat(cycle(slipped).periodDays().value())
        .isCloseTo(period.value(), within(period.uncertainty()));
    assertThat(
            HypothesisEstimator.compare(slipped, site, NearMoonAssumptions.USUAL)
                .log10BayesFactor())
        .isGreaterThan(10);
  }

  private SelfReliantCycle cycle(List<Observation> readings) {
    return SelfReliantEstimator.estimate(readings, site, AltitudeSource.COMPUTED).orElseThrow();
  }
}

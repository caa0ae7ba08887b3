package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

class NightRatioEstimatorTest {

  private static final Site SITE = new Site(-33.9, 18.5, 40);
  private static final Instant RISING = Instant.parse("2024-06-20T15:50:00Z");
  private static final Instant EARLIER = Instant.parse("2024-06-20T18:30:00Z");
  private static final Instant HIGHEST = Instant.parse("2024-06-20T21:40:00Z");

  @Test
  void pairIsHighOverLowWhateverTheScale() {
    NightRatios nights =
        estimate(reading(HIGHEST, Axis.HORIZONTAL, 1.4), reading(RISING, Axis.HORIZONTAL, 1.4));
    assertThat(nights.pairs()).hasSize(1);
    NightPair pair = nights.pairs().get(0);
    assertThat(pair.lowAt()).isEqualTo(RISING);
    assertThat(pair.highAt()).isEqualTo(HIGHEST);
    assertThat(pair.highAltitudeDeg()).isGreaterThan(pair.lowAltitudeDeg() + 40);
    assertThat(pair.predictedRatio()).isBetween(1.012, 1.018);
    assertThat(pair.observedRatio()).isCloseTo(pair.predictedRatio(), within(1e-12));
    assertThat(pair.uncertainty()).isBetween(0.0007, 0.002);
    assertThat(pair.verdict()).isEqualTo(Verdict.AGREES);
  }

  @Test
  void allReadingsOfAPassShapeItsRatio() {
    NightRatios nights =
        estimate(
            reading(RISING, Axis.HORIZONTAL, 1),
            reading(EARLIER, Axis.HORIZONTAL, 1),
            reading(HIGHEST, Axis.HORIZONTAL, 1));
    assertThat(nights.pairs()).hasSize(1);
    assertThat(nights.pairs().get(0).readingCount()).isEqualTo(3);
    assertThat(nights.pairs().get(0).observedRatio())
        .isCloseTo(nights.pairs().get(0).predictedRatio(), within(1e-9));
  }

  @Test
  void axesSetupsAndPassesAreNotMixed() {
    Observation other = reading(HIGHEST, Axis.HORIZONTAL, 1);
    Observation otherSetup =
        new Observation(
            other.takenAt(),
            other.axis(),
            other.observedArcmin(),
            other.relativeUncertainty(),
            other.sight(),
            1,
            other.sighted());
    assertThat(
            estimate(reading(RISING, Axis.HORIZONTAL, 1), reading(HIGHEST, Axis.VERTICAL, 1))
                .pairs())
        .isEmpty();
    assertThat(estimate(reading(RISING, Axis.HORIZONTAL, 1), otherSetup).pairs()).isEmpty();
    assertThat(
            estimate(
                    reading(RISING, Axis.HORIZONTAL, 1),
                    reading(HIGHEST.plusSeconds(86400), Axis.HORIZONTAL, 1))
                .pairs())
        .isEmpty();
  }

  @Test
  void nearlyEqualAltitudesAreTooFew() {
    NightRatios nights =
        estimate(
            reading(HIGHEST, Axis.HORIZONTAL, 1),
            reading(HIGHEST.plusSeconds(600), Axis.HORIZONTAL, 1));
    assertThat(nights.pairs().get(0).verdict()).isEqualTo(Verdict.TOO_FEW);
  }

  @Test
  void aDiscThatDoesNotGrowDeparts() {
    List<Observation> flat = new ArrayList<>();
    for (int day = 0; day < 6; day++) {
      for (Instant at : List.of(RISING, HIGHEST)) {
        MoonSight sight = SkyFixture.sky().moonAt(at.plusSeconds(89_400L * day), SITE);
        flat.add(new Observation(sight.at(), Axis.HORIZONTAL, 31, 0.001, sight, 0, Sighted.NONE));
      }
    }
    NightRatios nights = NightRatioEstimator.estimate(flat, SITE);
    assertThat(nights.verdict()).isEqualTo(Verdict.DEPARTS);
    assertThat(nights.slope().orElseThrow().value()).isCloseTo(0, within(0.01));
  }

  private static NightRatios estimate(Observation... observations) {
    return NightRatioEstimator.estimate(List.of(observations), SITE);
  }

  private static Observation reading(Instant at, Axis axis, double factor) {
    MoonSight sight = SkyFixture.sky().moonAt(at, SITE);
    return new Observation(
        at, axis, sight.diameterArcmin(axis) * factor, 0.001, sight, 0, Sighted.NONE);
  }
}

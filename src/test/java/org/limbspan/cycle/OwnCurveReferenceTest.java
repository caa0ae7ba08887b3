package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.hipparchus.stat.descriptive.rank.Median;
import org.junit.jupiter.api.Test;

/** Beside the computed Moon of the simulated rigs in {@code reference/readings}. */
class OwnCurveReferenceTest {

  private static final RigFixture RIG = RigFixture.of("clean-pairs");
  private static final OwnCurve CURVE =
      OwnCurve.of(RIG.observations(), RIG.site(), AltitudeSource.COMPUTED).orElseThrow();

  @Test
  void runsThroughTheReadings() {
    double[] apart =
        RIG.observations().stream()
            .mapToDouble(
                o -> Math.abs(Math.log(o.observedArcmin() / curveAt(o)) / o.relativeUncertainty()))
            .toArray();
    // Half of normal errors lie within 0.67 of their standard deviation; nights add to them.
    assertThat(new Median().evaluate(apart)).isBetween(0.3, 1.2);
  }

  @Test
  void drawsTheComputedMoonWithoutHavingSeenIt() {
    for (Observation o : RIG.observations()) {
      assertThat(curveAt(o) / o.sight().horizontalDiameterArcmin())
          .as(o.takenAt().toString())
          .isCloseTo(1, within(0.006));
    }
  }

  @Test
  void foldsOnItsOwnPerigees() {
    for (Observation o : RIG.observations()) {
      assertThat(CURVE.daysFromPerigee(o.takenAt())).isBetween(-13.9, 13.9);
    }
  }

  @Test
  void growsTowardsTheZenith() {
    Observation first = RIG.observations().get(0);
    double low = CURVE.diameterArcmin(first.takenAt(), 0);
    double high = CURVE.diameterArcmin(first.takenAt(), 90);
    // One Earth radius of some sixty: 1.6 to 1.8 percent.
    assertThat(high / low).isBetween(1.014, 1.020);
  }

  @Test
  void isNotDrawnThroughAHandfulOfReadings() {
    List<Observation> few = RIG.observations().subList(0, 5);
    assertThat(OwnCurve.of(few, RIG.site(), AltitudeSource.COMPUTED)).isEqualTo(Optional.empty());
  }

  private static double curveAt(Observation o) {
    return CURVE.diameterArcmin(o.takenAt(), o.sight().altitudeDeg());
  }
}

package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.sky.Site;

class EstimateTest {

  @Test
  void refusesWhatIsNoNumber() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Estimate(Double.NaN, 1))
        .withMessageContaining("value NaN");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Estimate(1, -0.1))
        .withMessageContaining("uncertainty -0.1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Noise(0, 0))
        .withMessageContaining("statedFactor 0.0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new SetupScale(0, Double.NaN))
        .withMessageContaining("relativeUncertainty NaN");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> MoonDiameterEstimator.estimate(List.of(), new Site(0, 0, 0), List.of(), -1))
        .withMessageContaining("commonRelativeUncertainty -1.0");
  }

  @Test
  void verdictIsAtThreeUncertainties() {
    assertThat(Verdict.of(new Estimate(1.29, 0.1), 1, 0.2)).isEqualTo(Verdict.AGREES);
    assertThat(Verdict.of(new Estimate(1.31, 0.1), 1, 0.2)).isEqualTo(Verdict.DEPARTS);
    assertThat(Verdict.of(new Estimate(1.29, 0.3), 1, 0.2)).isEqualTo(Verdict.TOO_FEW);
    assertThat(Verdict.of(new Estimate(2, 0.3), 1, 0.2)).isEqualTo(Verdict.DEPARTS);
  }

  @Test
  void distanceWithoutGrowthHasNoUpperEnd() {
    MoonDistance distance = MoonDistance.of(new Estimate(0.005, 0.004));
    assertThat(distance.earthRadii()).isEmpty();
    assertThat(distance.mostEarthRadii()).isEmpty();
    assertThat(distance.leastEarthRadii()).isBetween(76.0, 77.0);
  }
}

package org.limbspan.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.limbspan.limb.MeasureOptions.ExpectedFlattening;
import org.limbspan.sky.Refraction;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

class ComputedMoonTest {

  private static final Site SITE = new Site(47.1, 9.2, 520);

  /**
   * Bennett's formula across a disc of 31', 949 hPa and 10 degrees C as at 520 m, by an independent
   * program, less the 0.00028 that are the same in every direction: 0.0863 at 1.5 degrees, 0.0076
   * at 10.
   */
  @Test
  void expectsTheFlatteningDownToTheHorizonAsTheAirLeavesItOpen() {
    ExpectedFlattening low = at(1.5).options().flattening().orElseThrow();
    assertThat(low.value()).isCloseTo(0.0863, within(0.002));
    assertThat(low.uncertainty())
        .isCloseTo(Refraction.flatteningDoubt(1.5) * low.value(), within(0.0003));
    ExpectedFlattening high = at(10).options().flattening().orElseThrow();
    assertThat(high.value()).isCloseTo(0.0076, within(0.0002));
    assertThat(high.uncertainty()).isCloseTo(0.0004, within(0.0001));
  }

  @Test
  void expectsNoFlatteningWhereTheNightDecides() {
    assertThat(at(0.5).options().flattening()).isEmpty();
    assertThat(at(0.5).options().phase()).isPresent();
  }

  @Test
  void statesATenThousandthAtLeast() {
    assertThat(at(55).options().flattening().orElseThrow().uncertainty()).isBetween(1e-4, 1.1e-4);
  }

  private static ComputedMoon at(double apparentDeg) {
    return ComputedMoon.of(SkyFixture.sky(), SkyFixture.firstAt(apparentDeg, SITE).at(), SITE);
  }
}

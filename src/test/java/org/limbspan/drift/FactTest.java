package org.limbspan.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.Sighted;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Site;
import org.limbspan.sky.SkyFixture;

class FactTest {

  private static final Site SITE = new Site(47.1, 9.2, 520);

  /** Refraction.flatteningDoubt is 0.112 at 1 degree and 0.050 at 20. */
  @Test
  void doubtsTheAirMoreNearTheHorizon() {
    assertThat(airOverFlattening(1)).isCloseTo(0.112, within(0.002));
    assertThat(airOverFlattening(20)).isCloseTo(0.050, within(0.002));
  }

  @Test
  void statesTheAirOfAMoonThatIsSetting() {
    assertThat(airOverFlattening(-0.1)).isCloseTo(0.167, within(0.001));
  }

  @Test
  void sparesADiameterAlongTheHorizon() {
    assertThat(fact(Axis.HORIZONTAL, 2).air).isZero();
  }

  private static double airOverFlattening(double apparentDeg) {
    Fact fact = fact(Axis.VERTICAL, apparentDeg);
    return Math.sqrt(fact.air) / -fact.flattening;
  }

  private static Fact fact(Axis axis, double apparentDeg) {
    MoonSight sight = SkyFixture.firstAt(apparentDeg, SITE);
    return Fact.reading(
        new Observation(sight.at(), axis, 30, 0.001, sight, 0, Sighted.NONE), Double.NaN, true);
  }
}

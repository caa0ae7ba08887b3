package org.limbspan.limb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class OutlineTest {

  private static final Outline LOW_MOON = new Outline(410.2, 305.7, 212, 191, 0.006, 0.021);

  @Test
  void findsItsOwnPointsOnTheLimb() {
    for (int deg = 0; deg < 360; deg += 7) {
      double angle = Math.toRadians(deg);
      double[] point = LOW_MOON.pointAt(angle);
      Outline.Place place = LOW_MOON.place(point[0], point[1]);

      assertThat(place.depth()).isCloseTo(0, within(1e-9));
      assertThat(Math.cos(place.angle() - angle)).isCloseTo(1, within(1e-12));
    }
  }

  @Test
  void knowsHowEachParameterMovesTheLimb() {
    double[] step = {1e-4, 1e-4, 1e-4, 1e-4, 1e-7, 1e-7};
    for (int deg = 3; deg < 360; deg += 31) {
      double[] point = LOW_MOON.pointAt(Math.toRadians(deg));
      double[] motion = LOW_MOON.outwardMotion(Math.toRadians(deg));
      for (int k = 0; k < step.length; k++) {
        double[] p = LOW_MOON.toArray();
        p[k] += step[k];
        double moved = Outline.ofArray(p).place(point[0], point[1]).depth() / step[k];
        assertThat(motion[k])
            .as("parameter %s at %s deg", k, deg)
            .isCloseTo(moved, within(2e-3 * (1 + Math.abs(moved))));
      }
    }
  }

  @Test
  void spansItsVerticalDiameterWhateverTheAsymmetry() {
    double[] top = LOW_MOON.pointAt(Math.PI / 2);
    double[] bottom = LOW_MOON.pointAt(-Math.PI / 2);

    assertThat(Math.hypot(top[0] - bottom[0], top[1] - bottom[1]))
        .isCloseTo(LOW_MOON.verticalDiameterPx(), within(1e-9));
  }

  @Test
  void refusesARadiusOfZero() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Outline(1, 1, 0, 1, 0, 0))
        .withMessageContaining("radii 0.0, 1.0 px");
  }
}

package org.limbspan.scale;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** Rounding as JCGM 100:2008 (the GUM), 7.2.2 and 7.2.6, shows it. */
class MeasuredReferenceTest {

  /** GUM 7.2.2: m_S = 100.02147 g with u_c = 0.35 mg. */
  @Test
  void writesTheWeightOfTheGuidesExample() {
    Measured weight = new Measured(100.021_47, 0.000_35);

    assertThat(weight.valueText()).isEqualTo("100.02147");
    assertThat(weight.uncertaintyText()).isEqualTo("0.00035");
    assertThat(weight.expandedText()).isEqualTo("0.00070");
  }

  /** GUM 7.2.6: y = 10.057 62 ohm with u_c = 27 milliohm is rounded to 10.058 ohm. */
  @Test
  void roundsTheResistanceOfTheGuidesExample() {
    assertThat(new Measured(10.057_62, 0.027).valueText()).isEqualTo("10.058");
  }

  @Test
  void keepsAFullNumberWhereTheUncertaintyIsLarge() {
    Measured distance = new Measured(384_400.4, 1234);

    assertThat(distance.valueText()).isEqualTo("384400");
    assertThat(distance.uncertaintyText()).isEqualTo("1200");
  }

  @Test
  void writesAnExactValueAsItStands() {
    assertThat(new Measured(3474.8, 0).valueText()).isEqualTo("3474.8");
  }

  @Test
  void refusesWhatIsNoNumber() {
    assertThatThrownBy(() -> new Measured(Double.NaN, 1)).hasMessageContaining("value NaN");
    assertThatThrownBy(() -> new Measured(1, -1)).hasMessageContaining("standardUncertainty -1");
  }
}

package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class AxisTest {

  @ParameterizedTest
  @EnumSource(Axis.class)
  void isFoundByItsLabel(Axis axis) {
    assertThat(Axis.ofLabel(axis.label())).isEqualTo(axis);
  }

  @Test
  void bearsTheWordsOfTheInterface() {
    assertThat(Axis.values())
        .extracting(Axis::label)
        .containsExactly("horizontal", "vertical", "limb-fit");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "Horizontal", "LIMB_FIT", "limb fit"})
  void refusesOtherWords(String label) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Axis.ofLabel(label))
        .withMessage("axis '" + label + "': expected horizontal, vertical or limb-fit");
  }
}

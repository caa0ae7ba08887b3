package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.limbspan.scale.Measured;

class TypesetTest {

  @Test
  void roundsAPairAsTheGumAdvises() {
    assertThat(Typeset.pair(new Measured(-0.51234, 0.1299))).isEqualTo("\u22120.51 \u00b1 0.13");
    assertThat(Typeset.signedPair(new Measured(0.51234, 0.1299))).isEqualTo("+0.51 \u00b1 0.13");
  }

  @Test
  void givesNothingASignOfItsOwn() {
    assertThat(Typeset.pair(new Measured(-0.001, 0.2))).isEqualTo("0.00 \u00b1 0.20");
    assertThat(Typeset.places(-0.04, 1)).isEqualTo("0.0");
  }

  @Test
  void groupsThousandsWithThinSpaces() {
    assertThat(Typeset.whole(384400)).isEqualTo("384\u202f400");
    assertThat(Typeset.count(1, "reading")).isEqualTo("1 reading");
    assertThat(Typeset.count(1250, "reading")).isEqualTo("1\u202f250 readings");
  }

  @Test
  void alignsAColumnByItsPointsAndItsSigns() {
    assertThat(Aligned.column(List.of("12.42 \u00b1 0.21", "9.1 \u00b1 1.2", "113 \u00b1 14", "")))
        .containsExactly(
            "12.42 \u00b1 \u20070.21",
            "9.1\u2007 \u00b1 \u20071.2\u2007",
            "113\u2008\u2007\u2007 \u00b1 14\u2008\u2007\u2007",
            "\u2008\u2007\u2007   \u2007\u2007\u2008\u2007\u2007");
  }
}

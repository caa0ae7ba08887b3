package org.limbspan.scale;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Angles of sheets of paper. The rounded figures, 0.34 and 0.35 degrees, are common practice, no
 * source; the four-digit ones follow from 2 atan(s / 2d). Lengths: A4 long edge 297 mm (ISO
 * 216:2007), letter long edge 11 in (ANSI/ASME Y14.1), 1 in = 25.4 mm and 1 yd = 0.9144 m exactly
 * (international yard and pound agreement of 1959).
 */
class TargetReferenceTest {

  @Test
  void sheetOfA4AtFiftyMetresSpansAThirdOfADegree() {
    Target sheet = new Target(297, 0.15, 50, 0.02);
    assertThat(sheet.angleArcsec() / 3600).isCloseTo(0.3403, within(0.00005));
    assertThat(sheet.angleArcsec() / 3600).isCloseTo(0.34, within(0.005));
  }

  @Test
  void sheetOfElevenInchesAtFiftyYardsSpansAThirdOfADegree() {
    Target sheet = new Target(11 * 25.4, 0.15, 50 * 0.9144, 0.02);
    assertThat(sheet.angleArcsec() / 3600).isCloseTo(0.3501, within(0.00005));
    assertThat(sheet.angleArcsec() / 3600).isCloseTo(0.35, within(0.005));
  }

  @Test
  void targetAsLongAsTwiceItsDistanceSpansARightAngle() {
    // Elementary: atan 1 is 45 degrees. The small-angle shortcut would say 114.6 degrees.
    assertThat(new Target(20_000, 1, 10, 0.001).angleArcsec() / 3600).isCloseTo(90, within(1e-10));
  }
}

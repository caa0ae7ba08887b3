package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.List;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.SkyLight;

/** How to shoot, by phase and sky. All of it is common practice, without a source. */
final class TonightAdvice {

  private TonightAdvice() {}

  static List<String> general() {
    return List.of(
        "Zoom where it was, and taped; if it moved, enter a new setup and calibrate.",
        "Focus by hand, at infinity, on the limb; leave it there for the high reading.",
        "ISO 100; by night begin at f/11 and 1/60 s.",
        "Two-second timer, hands off; three frames in a bracket of exposures, one stop apart.",
        "Measure along the same axis in all frames.");
  }

  /** The same for a Moon as it stands. */
  static List<String> of(MoonSight sight) {
    List<String> advice = new ArrayList<>(general());
    double lit = sight.illuminatedFraction();
    advice.add(phase(lit));
    SkyLight light = SkyLight.of(sight.sunAltitudeDeg());
    if (light == SkyLight.DAY) {
      advice.add(
          "The Sun is in the sky then: keep the lens in the shade, know where the Sun is before you look, and"
              + " begin at 1/250 s.");
    } else if (!light.isDark()) {
      advice.add(
          "In bright twilight begin at 1/125 s, so that the sky does not wash out the limb.");
    }
    return advice;
  }

  private static String phase(double lit) {
    if (lit < 0.3) {
      return "A thin crescent is dim: go to 1/15 s or open the lens, and measure from cusp to cusp, which is a"
          + " full diameter.";
    }
    if (lit < 0.95) {
      return "Only the sunlit side is limb; the terminator is not. Measure from cusp to cusp, or fit the lit"
          + " limb.";
    }
    return "A full Moon is bright: bracket towards 1/125 s and 1/250 s. An overexposed limb grows.";
  }
}

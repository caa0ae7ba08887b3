package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.List;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.ShootingWindow;

/** Says which minutes of a pass were chosen, why, and what to expect of them. */
final class TonightChoice {

  private TonightChoice() {}

  static List<String> words(ShootingPlan plan) {
    List<String> words = new ArrayList<>();
    plan.low().ifPresent(low -> words.add(low(low)));
    plan.low()
        .ifPresent(
            low ->
                words.add(
                    "Low means an apparent altitude of 8\u00b0 to 15\u00b0, best at 10\u00b0: lower the air blurs the limb, higher"
                        + " a part of the ratio is given away. There refraction flattens the disc by "
                        + Typeset.places(flatteningPercent(low), 1)
                        + " % upright and not along the horizon, so measure along the horizontal axis."));
    plan.high()
        .ifPresent(
            high ->
                words.add(
                    "High means within 2\u00b0 of the culmination, at most an hour to either side"
                        + (plan.pass().culmination().equals(high.best())
                            ? ", best at the culmination itself."
                            : "; the culmination itself is not offered, so the best is as near to it as"
                                + " may be.")));
    plan.ratio()
        .ifPresent(
            ratio ->
                words.add(
                    "Expect the high reading to be %s times the low one along the horizontal axis: a disc of 1,000 px grows by %s px."
                        .formatted(
                            Typeset.places(ratio, 4), Typeset.places((ratio - 1) * 1000, 1))));
    plan.withheld().stream().map(TonightWords::withheld).forEach(words::add);
    if (plan.windows().isEmpty()) {
      words.add("So this pass offers no reading; the table of nights has better ones.");
    }
    return words;
  }

  private static String low(ShootingWindow low) {
    return "For the low reading of a pair the window \u201c"
        + TonightWords.place(low.place())
        + "\u201d is chosen, as the one in the darker sky, or the first of two that are equally dark.";
  }

  private static double flatteningPercent(ShootingWindow low) {
    return 100 * (1 - low.best().verticalDiameterArcmin() / low.best().horizontalDiameterArcmin());
  }
}

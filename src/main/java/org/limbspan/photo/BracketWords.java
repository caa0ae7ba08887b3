package org.limbspan.photo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.limbspan.photo.bracket.CombinedFrames;
import org.limbspan.photo.bracket.ExposureTrend;
import org.limbspan.photo.bracket.Frame;
import org.limbspan.photo.bracket.SetAside;

/** Says what is to be known of a reading made of photographs. */
final class BracketWords {

  private static final double MUCH = 2;
  private static final int LONGEST_NOTE = 3500;

  private BracketWords() {}

  /** Which photographs, then the remarks. */
  static String note(CombinedFrames combined) {
    String names = combined.used().stream().map(Frame::name).collect(Collectors.joining(", "));
    String from =
        combined.used().size() == 1
            ? "From the photograph " + names + "."
            : "From " + combined.used().size() + " photographs: " + names + ".";
    List<String> sentences = new ArrayList<>(List.of(from));
    sentences.addAll(remarks(combined));
    String note = String.join(" ", sentences);
    return note.length() <= LONGEST_NOTE ? note : note.substring(0, LONGEST_NOTE) + "...";
  }

  static List<String> remarks(CombinedFrames combined) {
    List<String> remarks = new ArrayList<>();
    combined.setAside().forEach(odd -> remarks.add(setAside(odd)));
    if (combined.birgeRatio() > MUCH) {
      remarks.add(
          String.format(
              Locale.ROOT,
              "The frames scatter %.1f times as much as their own uncertainties let expect; the"
                  + " uncertainty was enlarged accordingly.",
              combined.birgeRatio()));
    }
    combined.trend().filter(ExposureTrend::isSignificant).ifPresent(t -> remarks.add(trend(t)));
    return remarks;
  }

  private static String setAside(SetAside odd) {
    return String.format(
        Locale.ROOT,
        "%s was set aside: %.2f percent %s than the other frames, %.0f standard uncertainties.",
        odd.frame().name(),
        Math.abs(odd.differencePercent()),
        odd.differencePercent() > 0 ? "larger" : "smaller",
        odd.standardUncertainties());
  }

  private static String trend(ExposureTrend trend) {
    String figures =
        String.format(
            Locale.ROOT,
            "The measured size changes with the exposure by %+.3f percent a stop (standard"
                + " uncertainty %.3f)",
            trend.percentPerStop(),
            trend.uncertaintyPercentPerStop());
    return trend.percentPerStop() > 0
        ? figures + ": light spills over the limb. Expose for a shorter time."
        : figures + ": the darkest frames may be too weak, or the Moon was rising through haze.";
  }
}

package org.limbspan.watch;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.limbspan.drift.Figures;
import org.limbspan.drift.Finding;
import org.limbspan.scale.Measured;

/** Puts a finding into words for a person without statistics, in the rig's own time zone. */
final class FindingWords {

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm", Locale.ENGLISH);

  private final ZoneId zone;

  FindingWords(ZoneId zone) {
    this.zone = zone;
  }

  Explanation explain(Finding finding) {
    return new Explanation(
        what(finding),
        howMuch(finding),
        since(finding),
        howSure(finding),
        shownBy(finding.evidence()),
        CauseWords.sentence(finding.likelyCauses()),
        whatToDo(finding));
  }

  private static String what(Finding finding) {
    boolean larger = finding.sizePercent() > 0;
    return switch (finding.kind()) {
      case SCALE_STEP ->
          "From one reading to the next every disc became " + (larger ? "larger." : "smaller.");
      case SCALE_DRIFT ->
          "The discs " + (larger ? "grow" : "shrink") + " steadily against the computed Moon.";
      case SCATTER_GROWTH -> "The readings scatter more than they did before.";
      case CALIBRATION_CONFLICT ->
          "A calibration does not fit: not the others of its setup, or not the Moon itself.";
      case ALTITUDE_TREND -> "The residuals go with the Moon's altitude, as refraction does.";
      case CLOCK_SUSPECT -> "The Moon cannot have stood where it was seen at the times logged.";
      case SWING_DEPARTURE -> "The monthly size cycle is not as large as computed.";
      case RATIO_DEPARTURE ->
          "The size between low and high in one night changes otherwise than computed.";
    };
  }

  private static String howMuch(Finding finding) {
    Measured size = new Measured(finding.sizePercent(), finding.uncertaintyPercent());
    Figures figures = finding.figures();
    if (figures instanceof Figures.Drift drift) {
      Measured total = new Measured(drift.totalPercent(), drift.totalUncertaintyPercent());
      return "By "
          + signed(size)
          + " percent in 30 days (standard uncertainty "
          + size.uncertaintyText()
          + "), so far "
          + percent(total)
          + " in all.";
    }
    if (figures instanceof Figures.Scatter scatter) {
      return String.format(
          Locale.ROOT,
          "A single reading now scatters by %.2f percent, before by %.2f: %.1f times as much"
              + " (between %.1f and %.1f times, 95 in 100).",
          scatter.afterPercent(),
          scatter.beforePercent(),
          scatter.factor(),
          scatter.factorFrom(),
          scatter.factorTo());
    }
    if (figures instanceof Figures.Clock clock) {
      String below =
          clock.belowHorizon() == 0
              ? ""
              : " " + clock.belowHorizon() + " of them would have been taken below the horizon.";
      return minus(
              String.format(
                  Locale.ROOT,
                  "The logged times fit if they are %+.1f hours off.",
                  clock.offsetHours()))
          + below;
    }
    if (figures instanceof Figures.Altitude altitude) {
      Measured share =
          new Measured(altitude.flatteningShare(), altitude.flatteningShareUncertainty());
      return "The trend is "
          + minus(share.valueText())
          + " of the flattening by refraction (standard uncertainty "
          + share.uncertaintyText()
          + "), "
          + percent(size)
          + " on a disc at 10 degrees.";
    }
    if (figures instanceof Figures.Departure departure) {
      Measured slope = new Measured(departure.slope(), departure.slopeUncertainty());
      return "Observed change is "
          + minus(slope.valueText())
          + " times the computed one (standard uncertainty "
          + slope.uncertaintyText()
          + ").";
    }
    if (figures instanceof Figures.Calibration) {
      return "Its plate scale is off by " + percent(size) + ".";
    }
    return "By " + percent(size) + ".";
  }

  private String since(Finding finding) {
    String interval =
        " (between "
            + minute(finding.onsetFrom())
            + " and "
            + minute(finding.onsetTo())
            + ", 95 in 100)";
    String until = finding.until().map(end -> " until " + minute(end)).orElse("");
    if (Duration.between(finding.onsetFrom(), finding.onsetTo()).isZero()) {
      return "Since " + minute(finding.onsetAt()) + until + ".";
    }
    return "Since about " + day(finding.onsetAt()) + until + interval + ".";
  }

  private static String howSure(Finding finding) {
    double chance = 1 - finding.probability();
    String words =
        chance < 0.001
            ? "Practically certain"
            : chance < 0.01 ? "Almost certain" : chance < 0.05 ? "Very likely" : "Likely";
    return words + ": odds that it is chance " + CauseWords.odds(chance) + ".";
  }

  private String shownBy(List<Instant> evidence) {
    if (evidence.isEmpty()) {
      return "It shows in the whole history rather than in single readings.";
    }
    if (evidence.size() == 1) {
      return "Shown by one entry, of " + minute(evidence.get(0)) + ".";
    }
    return "Shown by "
        + evidence.size()
        + " entries from "
        + minute(evidence.get(0))
        + " to "
        + minute(evidence.get(evidence.size() - 1))
        + ".";
  }

  private static String whatToDo(Finding finding) {
    return switch (finding.kind()) {
      case SCALE_STEP ->
          "Tonight: do not touch the rig, look at zoom, focus and image size, photograph the"
              + " calibration target again, then answer here with what you found.";
      case SCALE_DRIFT ->
          "Tonight: mark or tape the zoom and focus rings, calibrate now and again in two weeks,"
              + " and see whether the calibrations creep as the Moon does.";
      case SCATTER_GROWTH ->
          "Tonight: check focus and the two-second timer, take five frames instead of three, and"
              + " note seeing and haze.";
      case CALIBRATION_CONFLICT ->
          "Measure length and distance of that calibration again; withdraw it if it was wrong,"
              + " and photograph the target once more.";
      case ALTITUDE_TREND ->
          "Look at some of these photographs: was the diameter taken along the horizon or across"
              + " it? Enter them again under the right axis.";
      case CLOCK_SUSPECT ->
          "Compare the camera's clock with a time signal, check zone, summer time and the sign"
              + " of the rig's longitude, and enter the readings again with the right time.";
      case SWING_DEPARTURE, RATIO_DEPARTURE ->
          "Take the next low and high readings in one night without touching the rig, and"
              + " measure one photograph twice: a departure that stays is the Moon's or the"
              + " measuring's, not the scale's.";
    };
  }

  private String day(Instant instant) {
    return DAY.format(instant.atZone(zone));
  }

  private String minute(Instant instant) {
    return MINUTE.format(instant.atZone(zone));
  }

  private static String signed(Measured measured) {
    return (measured.value() > 0 ? "+" : "") + minus(measured.valueText());
  }

  /** The true minus sign, U+2212, in place of the hyphen. */
  private static String minus(String number) {
    return number.replace('-', '\u2212');
  }

  private static String percent(Measured measured) {
    return signed(measured) + " percent (standard uncertainty " + measured.uncertaintyText() + ")";
  }
}

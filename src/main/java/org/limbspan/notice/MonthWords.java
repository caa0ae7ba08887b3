package org.limbspan.notice;

import java.time.Instant;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.Rig;
import org.limbspan.scale.Measured;
import org.limbspan.watch.Alert;
import org.limbspan.watch.AlertState;
import org.limbspan.watch.CycleResult;
import org.limbspan.watch.Judgement;
import org.limbspan.watch.NightsResult;

/** A month and the cycle so far, in words. Uncertainties are standard uncertainties. */
final class MonthWords {

  private static final DateTimeFormatter MONTH =
      DateTimeFormatter.ofPattern("MMMM uuuu", Locale.ENGLISH);
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
  private static final int LATEST = 3;

  private final Rig rig;
  private final YearMonth month;
  private final int readings;

  /**
   * @param readings taken in that month
   */
  MonthWords(Rig rig, YearMonth month, int readings) {
    this.rig = rig;
    this.month = month;
    this.readings = readings;
  }

  Letter letter(Judgement judgement, List<Alert> alerts) {
    String name = MONTH.format(month);
    String text =
        String.join(
            "\n\n",
            "Rig: " + rig.name(),
            name + ": " + count(readings, "reading") + " taken.",
            swing(judgement.cycle()),
            months(judgement.cycle().months()),
            nights(judgement.nights().summary()),
            waiting(alerts));
    return new Letter(
        OneLine.of(rig.name() + ": " + name), text + "\n", "/rigs/" + rig.slug() + "/cycle");
  }

  private static String swing(CycleResult cycle) {
    String all = "The cycle so far, over " + count(cycle.readingCount(), "reading") + ": ";
    CycleResult.Swing swing = cycle.swing();
    return all
        + pair(swing.slope(), swing.slopeUncertainty(), "")
            .map(
                slope ->
                    "the observed swing is "
                        + slope
                        + " of the computed one ("
                        + swing.verdict()
                        + ").")
            .orElse("too few to tell the swing.");
  }

  private String months(List<CycleResult.Month> months) {
    if (months.isEmpty()) {
      return "No month from perigee to perigee is covered yet.";
    }
    StringBuilder words = new StringBuilder("From perigee to perigee, the latest first:");
    for (int i = months.size() - 1; i >= Math.max(0, months.size() - LATEST); i--) {
      words.append("\n  ").append(month(months.get(i)));
    }
    return words.toString();
  }

  private String month(CycleResult.Month each) {
    String swing =
        pair(each.observedSwingPercent(), each.uncertaintyPercent(), " percent")
            .map(observed -> "swing " + observed)
            .orElse("too few for a swing");
    return String.format(
        Locale.ROOT,
        "%s to %s: %s, %s, computed %.1f percent",
        day(each.perigeeAt()),
        day(each.nextPerigeeAt()),
        count(each.readingCount(), "reading"),
        swing,
        each.predictedSwingPercent());
  }

  private static String nights(NightsResult.Summary nights) {
    return pair(nights.meanObservedRatio(), nights.meanRatioUncertainty(), "")
        .map(
            ratio ->
                "Within a night, high over low, over "
                    + count(nights.pairCount(), "pair")
                    + ": "
                    + ratio
                    + " ("
                    + nights.verdict()
                    + ").")
        .orElse("Night pairs: too few to tell a ratio.");
  }

  private static String waiting(List<Alert> alerts) {
    long waiting =
        alerts.stream().filter(each -> each.state().equals(AlertState.RAISED.label())).count();
    return waiting == 0
        ? "No remark waits for an answer."
        : count(waiting, "remark") + (waiting == 1 ? " waits" : " wait") + " for an answer.";
  }

  private static Optional<String> pair(
      @Nullable Double value, @Nullable Double uncertainty, String unit) {
    if (value == null || uncertainty == null) {
      return Optional.empty();
    }
    Measured measured = new Measured(value, uncertainty);
    return Optional.of(measured.valueText() + " +- " + measured.uncertaintyText() + unit);
  }

  private String day(Instant at) {
    return DAY.format(at.atZone(rig.timeZone()));
  }

  private static String count(long value, String noun) {
    return value + " " + noun + (value == 1 ? "" : "s");
  }
}

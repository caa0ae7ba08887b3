package org.limbspan.dashboard;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.limbspan.cycle.Observation;
import org.limbspan.dashboard.LedgerSheet.Chapter;
import org.limbspan.dashboard.LedgerSheet.Dated;
import org.limbspan.dashboard.LedgerSheet.Remark;
import org.limbspan.dashboard.LedgerSheet.Title;
import org.limbspan.scale.Measured;
import org.limbspan.sky.Apsis;
import org.limbspan.watch.CycleResult;
import org.limbspan.watch.NightsResult;

/** Puts what is held and judged of a rig into the words of its ledger page. */
final class LedgerSheets {

  private static final int MONTHS_SHOWN = 14;

  private LedgerSheets() {}

  /**
   * The sheet.
   *
   * @param apsides the apsides about {@code now}, for the margin
   */
  static LedgerSheet of(LedgerFacts facts, List<Apsis> apsides, Instant now) {
    List<LedgerSheet.Month> months = MonthTable.of(facts.cycle().months(), facts.time());
    int shown = Math.min(MONTHS_SHOWN, months.size());
    return new LedgerSheet(
        title(facts),
        remarks(facts),
        cycle(facts, apsides, now),
        residuals(facts),
        nights(facts),
        months.subList(0, shown),
        months.subList(shown, months.size()),
        EstimateTable.of(facts.cycle(), facts.nights()),
        LogTable.of(facts));
  }

  private static Title title(LedgerFacts facts) {
    List<String> margin = new ArrayList<>();
    facts.firstAt().ifPresent(at -> margin.add("begun " + facts.time().shortDay(at)));
    facts.lastAt().ifPresent(at -> margin.add("latest " + facts.time().shortDay(at)));
    return new Title(
        facts.slug(),
        facts.name(),
        Coordinate.LATITUDE.words(facts.site().latitudeDeg())
            + ", "
            + Coordinate.LONGITUDE.words(facts.site().longitudeDeg())
            + ", "
            + Typeset.places(facts.site().elevationM(), 0)
            + " m above sea level",
        standing(facts),
        "judged "
            + facts.time().minute(facts.judgedAt())
            + (facts.pending() ? "; new entries wait" : "; nothing waits"),
        facts.observations().isEmpty()
            ? "None yet."
            : "Nothing to remark: every reading so far is as a steady rig would give it.",
        facts.time().zone().getId(),
        margin,
        facts.invented(),
        facts.observations().isEmpty(),
        facts.note());
  }

  private static String standing(LedgerFacts facts) {
    String waiting =
        facts.uncalibrated() == 0
            ? ""
            : " "
                + Typeset.count(facts.uncalibrated(), "reading")
                + " more must wait for a calibration of their setup.";
    String inferred =
        facts.inferred().isEmpty()
            ? ""
            : " The plate scale of "
                + Typeset.count(facts.inferred().size(), "reading")
                + " is taken from the computed Moon, for want of a calibration: not independent of"
                + " it.";
    String instrument =
        Typeset.count(facts.setupsStartedAt().size() + 1, "setup")
            + ", "
            + Typeset.count(facts.calibratedAt().size(), "calibration")
            + "."
            + inferred
            + waiting;
    return facts
        .firstAt()
        .map(
            first ->
                Typeset.count(facts.observations().size(), "reading")
                    + " "
                    + facts.time().days(first, facts.lastAt().orElse(first))
                    + ", "
                    + instrument)
        .orElse("No reading yet, " + instrument);
  }

  /** Those that wait for an answer first, then the latest first. */
  private static List<Remark> remarks(LedgerFacts facts) {
    return IntStream.range(0, facts.alerts().size())
        .mapToObj(i -> RemarkWords.of(i + 1, facts.alerts().get(i), facts.time()))
        .sorted(
            Comparator.comparing(Remark::waiting)
                .reversed()
                .thenComparing(Remark::number, Comparator.reverseOrder()))
        .toList();
  }

  private static Chapter cycle(LedgerFacts facts, List<Apsis> apsides, Instant now) {
    List<Dated> margin =
        apsides.stream()
            .map(
                apsis ->
                    new Dated(
                        (apsis.at().isAfter(now) ? "next " : "last ")
                            + (apsis.kind() == Apsis.Kind.PERIGEE ? "perigee" : "apogee"),
                        facts.time().shortDay(apsis.at())
                            + ", "
                            + Typeset.whole(Math.round(apsis.distanceKm()))
                            + "\u00a0km"))
            .toList();
    return new Chapter(
        Stream.concat(Stream.of(swing(facts.cycle())), facts.cycle().remarks().stream()).toList(),
        cycleSummary(facts),
        margin);
  }

  private static String swing(CycleResult cycle) {
    Double slope = cycle.swing().slope();
    Double uncertainty = cycle.swing().slopeUncertainty();
    if (slope == null || uncertainty == null || cycle.swing().verdict().equals("too-few")) {
      return "The readings are too few yet to judge the monthly swing: nights near perigee and near"
          + " apogee tell most.";
    }
    return "From apogee to perigee the disc grows "
        + Typeset.pair(new Measured(slope, uncertainty))
        + " times as much as computed: the swing "
        + cycle.swing().verdict()
        + ".";
  }

  private static String cycleSummary(LedgerFacts facts) {
    Comparator<Observation> bySize = Comparator.comparingDouble(Observation::observedArcmin);
    Optional<Observation> least = facts.observations().stream().min(bySize);
    Optional<Observation> greatest = facts.observations().stream().max(bySize);
    if (least.isEmpty() || greatest.isEmpty()) {
      return "";
    }
    return "The least diameter observed is "
        + sizeThen(least.get(), facts.time())
        + "; the greatest "
        + sizeThen(greatest.get(), facts.time())
        + ".";
  }

  private static String sizeThen(Observation o, RigTime time) {
    return Typeset.places(o.observedArcmin(), 2)
        + "\u2032 on "
        + time.day(o.takenAt())
        + ", where "
        + Typeset.places(o.predictedArcmin(), 2)
        + "\u2032 was computed";
  }

  private static Chapter residuals(LedgerFacts facts) {
    List<ResidualLevels.Level> levels = ResidualLevels.of(facts);
    List<Dated> margin =
        levels.stream()
            .map(
                level ->
                    new Dated(
                        "from " + facts.time().shortDay(level.from()),
                        "level " + level(level.percent())))
            .toList();
    List<String> summary =
        levels.stream()
            .map(
                level ->
                    level(level.percent())
                        + " "
                        + facts.time().days(level.from(), level.to())
                        + " ("
                        + Typeset.count(level.readings(), "reading")
                        + ")")
            .toList();
    return new Chapter(
        List.of(
            "A residual is what is left of a reading when the computed Moon is taken away. A rig"
                + " that nobody touches keeps it level; the level itself is the calibration\u2019s"
                + " affair."),
        summary.isEmpty() ? "" : "Median residual: " + String.join("; ", summary) + ".",
        margin);
  }

  private static String level(double percent) {
    return (percent > 0.005 ? "+" : "") + Typeset.places(percent, 2) + " %";
  }

  private static Chapter nights(LedgerFacts facts) {
    NightsResult.Summary summary = facts.nights().summary();
    Double observed = summary.meanObservedRatio();
    Double predicted = summary.meanPredictedRatio();
    Double uncertainty = summary.meanRatioUncertainty();
    String why =
        "Between rising and culmination the turning Earth carries the observer towards the Moon,"
            + " and the disc grows by one or two percent. This ratio needs no calibration.";
    if (observed == null || predicted == null || uncertainty == null) {
      return new Chapter(List.of(why, "No night yet has a low and a high reading."), "", List.of());
    }
    Measured ratio = new Measured(observed, uncertainty);
    String computed = new Measured(predicted, uncertainty).valueText();
    String verdict =
        summary.verdict().equals("too-few")
            ? "too few to judge"
            : "the growth " + summary.verdict();
    return new Chapter(
        List.of(why),
        Typeset.count(summary.pairCount(), "night pair")
            + ": mean observed ratio "
            + Typeset.unbroken(Typeset.pair(ratio))
            + ", computed "
            + computed
            + "; "
            + verdict
            + ".",
        List.of(
            new Dated("night pairs", Typeset.whole(summary.pairCount())),
            new Dated("mean observed", Typeset.pair(ratio)),
            new Dated("mean computed", computed)));
  }
}

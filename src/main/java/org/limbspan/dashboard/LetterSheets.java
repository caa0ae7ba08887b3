package org.limbspan.dashboard;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.Observation;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.scale.Measured;
import org.limbspan.scale.PlateScale;
import org.limbspan.scale.StarPair;
import org.limbspan.scale.Target;
import org.limbspan.sky.Sky;
import org.limbspan.watch.Conclusions;
import org.limbspan.watch.CycleResult;
import org.limbspan.watch.NightsResult.Night;

/** Writes the letter about an interval: all that the ledger holds and judges of it. */
final class LetterSheets {

  private final LedgerFacts facts;
  private final InstrumentHistory history;
  private final Sky sky;
  private final Instant from;
  private final Instant to;
  private final RigTime time;

  /**
   * @param from included
   * @param to excluded
   */
  LetterSheets(LedgerFacts facts, InstrumentHistory history, Sky sky, Instant from, Instant to) {
    this.facts = facts;
    this.history = history;
    this.sky = sky;
    this.from = from;
    this.to = to;
    this.time = facts.time();
  }

  LetterSheet sheet(Conclusions conclusions) {
    List<Observation> readings =
        facts.observations().stream().filter(o -> holds(o.takenAt())).toList();
    List<Night> nights =
        facts.nights().nights().stream().filter(n -> holds(n.culminationAt())).toList();
    List<CycleResult.Month> months =
        facts.cycle().months().stream()
            .filter(m -> m.perigeeAt().isBefore(to) && m.nextPerigeeAt().isAfter(from))
            .toList();
    ConclusionsSheet concluded = ConclusionsSheets.of(conclusions);
    return new LetterSheet(
        facts.slug(),
        facts.name(),
        Coordinate.LATITUDE.words(facts.site().latitudeDeg())
            + ", "
            + Coordinate.LONGITUDE.words(facts.site().longitudeDeg()),
        time.day(from) + " to " + time.day(to),
        time.minute(facts.judgedAt()) + ", " + time.zone().getId(),
        facts.invented(),
        from.toString(),
        to.toString(),
        opening(readings.size(), nights.size()),
        readings.isEmpty() ? null : plot(readings.stream().map(LetterSheets::size).toList()),
        nights.isEmpty() ? null : plot(nights.stream().map(LetterSheets::ratio).toList()),
        NightsSheets.lines(nights, new NearRatio(sky, facts.site()), time),
        MonthTable.of(months, time),
        remarks(),
        history.calibrations().stream()
            .filter(c -> holds(c.takenAt()))
            .map(this::calibrated)
            .toList(),
        concluded.questions(),
        concluded.figures(),
        others());
  }

  private boolean holds(Instant at) {
    return !at.isBefore(from) && at.isBefore(to);
  }

  private List<String> opening(int readings, int pairs) {
    return List.of(
        Typeset.count(readings, "reading")
            + " and "
            + Typeset.count(pairs, "night pair")
            + " fall into this interval, of "
            + Typeset.count(facts.observations().size(), "reading")
            + " and "
            + Typeset.count(facts.nights().summary().pairCount(), "night pair")
            + " that the ledger holds."
            + (facts.pending() ? " New entries wait to be judged." : ""));
  }

  private LetterPlot plot(List<LetterPlot.Value> values) {
    return LetterPlot.of(values, from, to, time);
  }

  private static LetterPlot.Value size(Observation o) {
    return new LetterPlot.Value(
        o.takenAt(),
        o.observedArcmin(),
        o.observedArcmin() * o.relativeUncertainty(),
        o.predictedArcmin());
  }

  private static LetterPlot.Value ratio(Night night) {
    return new LetterPlot.Value(
        night.culminationAt(), night.observedRatio(), night.uncertainty(), night.predictedRatio());
  }

  /** Those that began or were proved in the interval, and earlier ones that wait for an answer. */
  private List<LedgerSheet.Remark> remarks() {
    return IntStream.range(0, facts.alerts().size())
        .filter(
            i ->
                facts.alerts().get(i).onsetAt().isBefore(to)
                    && (!facts.alerts().get(i).evidenceAt().isBefore(from)
                        || facts.alerts().get(i).state().equals("raised")))
        .mapToObj(i -> RemarkWords.of(i + 1, facts.alerts().get(i), time))
        .toList();
  }

  private LetterSheet.Calibrated calibrated(RecordedCalibration each) {
    PlateScale scale = each.plateScale();
    String unit = scale.unit().symbol();
    return new LetterSheet.Calibrated(
        time.minute(each.takenAt()),
        each.calibration().reference() instanceof Target target
            ? Typeset.pair(new Measured(target.lengthMm(), target.lengthUncertaintyMm()))
                + " mm at "
                + Typeset.pair(new Measured(target.distanceM(), target.distanceUncertaintyM()))
                + " m"
            : stars(each),
        Typeset.pair(
                new Measured(
                    each.calibration().measured().value(),
                    each.calibration().measured().uncertainty()))
            + " "
            + unit,
        Typeset.pair(new Measured(scale.arcsecPerUnit(), scale.uncertainty())) + " \u2033/" + unit);
  }

  private static String stars(RecordedCalibration each) {
    return each.calibration().reference() instanceof StarPair
        ? "two stars, "
            + Typeset.places(each.calibration().reference().angleArcsec() / 60, 2)
            + "\u2032 apart"
        : Typeset.places(each.calibration().reference().angleArcsec() / 60, 2) + "\u2032";
  }

  private List<LetterSheet.Other> others() {
    List<LetterSheet.Other> others = new ArrayList<>();
    for (CycleResult.Month month : facts.cycle().months()) {
      others.add(
          new LetterSheet.Other(
              time.shortDay(month.perigeeAt()) + " to " + time.shortDay(month.nextPerigeeAt()),
              month.perigeeAt().toString(),
              month.nextPerigeeAt().toString()));
    }
    Collections.reverse(others);
    return others;
  }

  /** The last month that has readings enough for a swing; else the last; empty without one. */
  static CycleResult.@Nullable Month latest(LedgerFacts facts) {
    List<CycleResult.Month> months = facts.cycle().months();
    for (int i = months.size() - 1; i >= 0; i--) {
      if (!months.get(i).verdict().equals("too-few")) {
        return months.get(i);
      }
    }
    return months.isEmpty() ? null : months.get(months.size() - 1);
  }
}

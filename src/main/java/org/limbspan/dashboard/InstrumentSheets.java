package org.limbspan.dashboard;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.limbspan.cycle.Observation;
import org.limbspan.dashboard.InstrumentSheet.Budget;
import org.limbspan.dashboard.InstrumentSheet.CalibrationLine;
import org.limbspan.dashboard.InstrumentSheet.SetupLine;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.rig.Setup;
import org.limbspan.scale.MeanScale;
import org.limbspan.scale.Measured;
import org.limbspan.scale.PlateScale;
import org.limbspan.scale.Reference;
import org.limbspan.scale.StarPair;
import org.limbspan.scale.Target;

/** Puts setups, calibrations and plate scales into words. */
final class InstrumentSheets {

  /** Where no reading tells it: common practice for a camera on a tripod, no source. */
  private static final double USUAL_READING = 0.001;

  private final LedgerFacts ledger;
  private final InstrumentFacts facts;
  private final RigTime time;

  private InstrumentSheets(LedgerFacts ledger, InstrumentFacts facts) {
    this.ledger = ledger;
    this.facts = facts;
    this.time = ledger.time();
  }

  /**
   * @param entered id of the calibration that was just entered, for a sentence about it
   */
  static InstrumentSheet of(
      LedgerFacts ledger, InstrumentFacts facts, Optional<Long> entered, Instant now) {
    return new InstrumentSheets(ledger, facts).sheet(entered, now);
  }

  private InstrumentSheet sheet(Optional<Long> entered, Instant now) {
    List<RecordedCalibration> newestFirst = new ArrayList<>(facts.history().calibrations());
    newestFirst.sort(Comparator.comparing(RecordedCalibration::takenAt, Comparator.reverseOrder()));
    return new InstrumentSheet(
        Typeset.count(facts.history().setups().size(), "setup")
            + ", "
            + Typeset.count(newestFirst.size(), "calibration"),
        scaleSummary(),
        facts.unitSymbol(),
        setups(),
        calibrations(newestFirst),
        budget().orElse(null),
        time.field(now),
        entered.flatMap(id -> confirmation(newestFirst, id)).orElse(""));
  }

  private List<SetupLine> setups() {
    return facts.history().setups().stream().map(this::setup).toList();
  }

  private SetupLine setup(Setup setup) {
    Optional<MeanScale> mean = facts.history().scaleOf(setup);
    return new SetupLine(
        Typeset.whole(setup.number() + 1),
        span(setup),
        Typeset.whole(facts.calibrationsOf(setup).size()),
        mean.map(scale -> scaleText(scale.scale())).orElseGet(() -> inferred(setup)),
        mean.flatMap(InstrumentSheets::agreement).orElse(""),
        setup.note() == null ? "" : setup.note());
  }

  private String span(Setup setup) {
    String from = setup.startedAt().map(time::minute).orElse("the beginning");
    String to = setup.endedAt().map(time::minute).orElse("now");
    return from + " to " + to;
  }

  private String inferred(Setup setup) {
    return facts
        .inferredOf(setup)
        .map(
            its ->
                Typeset.places(its.arcsecPerUnit(), 4)
                    + " \u2033/"
                    + its.unitSymbol()
                    + ", taken from the computed Moon, not independent")
        .orElse("none yet");
  }

  private static Optional<String> agreement(MeanScale mean) {
    if (mean.agreementProbability().isEmpty()) {
      return Optional.empty();
    }
    double chance = mean.agreementProbability().getAsDouble();
    String ratio = Typeset.places(mean.birgeRatio().orElse(1), 2);
    return Optional.of((chance < 0.01 ? "disagree" : "agree") + ", Birge ratio " + ratio);
  }

  private static String scaleText(PlateScale scale) {
    return Typeset.pair(new Measured(scale.arcsecPerUnit(), scale.uncertainty()))
        + " \u2033/"
        + scale.unit().symbol();
  }

  private List<CalibrationLine> calibrations(List<RecordedCalibration> newestFirst) {
    List<String> scales =
        Aligned.column(
            newestFirst.stream()
                .map(each -> each.plateScale())
                .map(s -> Typeset.pair(new Measured(s.arcsecPerUnit(), s.uncertainty())))
                .toList());
    List<String> off = Aligned.column(newestFirst.stream().map(this::offMean).toList());
    return IntStream.range(0, newestFirst.size())
        .mapToObj(i -> calibration(newestFirst.get(i), scales.get(i), off.get(i)))
        .toList();
  }

  private CalibrationLine calibration(RecordedCalibration recorded, String scale, String off) {
    Reference reference = recorded.calibration().reference();
    Measured measured =
        new Measured(
            recorded.calibration().measured().value(),
            recorded.calibration().measured().uncertainty());
    return new CalibrationLine(
        recorded.id(),
        time.minute(recorded.takenAt()),
        Typeset.whole(recorded.setup() + 1),
        targetText(reference),
        distanceText(reference),
        Typeset.pair(measured) + " " + recorded.calibration().measured().unit().symbol(),
        recorded.plateScale().unit().symbol().equals(facts.unitSymbol())
            ? scale
            : scale + " \u2033/" + recorded.plateScale().unit().symbol(),
        off,
        recorded.note() == null ? "" : recorded.note());
  }

  private static String targetText(Reference reference) {
    if (reference instanceof Target target) {
      return Typeset.pair(new Measured(target.lengthMm(), target.lengthUncertaintyMm())) + " mm";
    }
    StarPair stars = (StarPair) reference;
    return "two stars, "
        + Typeset.pair(new Measured(stars.separationArcmin(), stars.separationUncertaintyArcmin()))
        + "\u2032";
  }

  private static String distanceText(Reference reference) {
    return reference instanceof Target target
        ? Typeset.pair(new Measured(target.distanceM(), target.distanceUncertaintyM())) + " m"
        : "";
  }

  private String offMean(RecordedCalibration recorded) {
    Setup setup = facts.history().setups().get(recorded.setup());
    return facts
        .history()
        .scaleOf(setup)
        .filter(mean -> mean.calibrationCount() > 1)
        .map(mean -> Math.log(recorded.plateScale().arcsecPerUnit() / mean.scale().arcsecPerUnit()))
        .map(
            ln ->
                Typeset.signedPair(
                    new Measured(
                        100 * ln,
                        100
                            * recorded.plateScale().independentUncertainty()
                            / recorded.plateScale().arcsecPerUnit())))
        .orElse("");
  }

  private Optional<Budget> budget() {
    List<Setup> newestFirst = new ArrayList<>(facts.history().setups());
    Collections.reverse(newestFirst);
    return newestFirst.stream()
        .flatMap(
            setup -> BudgetTable.of(facts.calibrationsOf(setup), typicalReading(setup)).stream())
        .findFirst();
  }

  /** Median of the stated uncertainties of the setup's readings, else of all. */
  private double typicalReading(Setup setup) {
    List<Observation> all = ledger.observations();
    List<Observation> own = all.stream().filter(o -> o.setup() == setup.number()).toList();
    return Stream.of(own, all)
        .filter(readings -> !readings.isEmpty())
        .findFirst()
        .map(
            readings -> Medians.of(readings.stream().mapToDouble(Observation::relativeUncertainty)))
        .orElse(USUAL_READING);
  }

  private String scaleSummary() {
    if (facts.history().calibrations().isEmpty()) {
      return "";
    }
    return facts.history().setups().stream()
        .flatMap(
            setup ->
                facts
                    .history()
                    .scaleOf(setup)
                    .map(mean -> "setup " + (setup.number() + 1) + " " + scaleText(mean.scale()))
                    .stream())
        .reduce((one, other) -> one + ", " + other)
        .map(words -> "Mean plate scales: " + words + ".")
        .orElse("");
  }

  private Optional<String> confirmation(List<RecordedCalibration> all, long id) {
    return all.stream()
        .filter(each -> each.id() == id)
        .findFirst()
        .map(
            each ->
                "Entered: the calibration of "
                    + time.minute(each.takenAt())
                    + " gives "
                    + scaleText(each.plateScale())
                    + " to setup "
                    + (each.setup() + 1)
                    + ".");
  }
}

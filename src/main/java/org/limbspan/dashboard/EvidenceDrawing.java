package org.limbspan.dashboard;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.Observation;
import org.limbspan.dashboard.Drawing.Axis;
import org.limbspan.dashboard.Drawing.Band;
import org.limbspan.dashboard.Drawing.Layer;
import org.limbspan.dashboard.Drawing.Look;
import org.limbspan.dashboard.Drawing.Upright;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.watch.Alert;
import org.limbspan.watch.NightsResult.Night;

/** What an alert rests on, as a figure: for each kind the one in which an eye would find it. */
final class EvidenceDrawing {

  private static final Duration BEFORE = Duration.ofDays(60);
  private static final Duration AFTER = Duration.ofDays(30);
  private static final double THIRTY_DAYS_S = 30 * 86400.0;
  private static final int FEW_SIGHTINGS = 3;

  private final LedgerFacts facts;
  private final Supplier<InstrumentHistory> history;
  private final Alert alert;
  private final Set<Instant> shown;

  private EvidenceDrawing(LedgerFacts facts, Supplier<InstrumentHistory> history, Alert alert) {
    this.facts = facts;
    this.history = history;
    this.alert = alert;
    this.shown = new HashSet<>(alert.readings());
  }

  /**
   * @param history needed for a conflict of calibrations alone
   */
  static Drawing of(LedgerFacts facts, Supplier<InstrumentHistory> history, Alert alert) {
    EvidenceDrawing evidence = new EvidenceDrawing(facts, history, alert);
    Drawing drawing =
        switch (alert.kind()) {
          case "scale-drift" -> evidence.overTime(List.of(evidence.drift()));
          case "scatter-growth" -> evidence.overTime(List.of());
          case "altitude-trend" -> evidence.againstAltitude();
          case "clock-suspect" -> evidence.altitudes();
          case "ratio-departure" -> evidence.nights();
          case "swing-departure" -> evidence.sizes();
          case "calibration-conflict" -> evidence.calibrations();
          default -> evidence.overTime(evidence.levels());
        };
    return drawing.in(facts.time());
  }

  /** What the figure shows, for those who cannot see it and those who can. */
  static String words(String kind) {
    return switch (kind) {
      case "scale-drift" ->
          "Residuals over time, with bars of k = 2. The heavy line is the drift that was judged; the"
              + " shading is the time within which it began.";
      case "scatter-growth" ->
          "Residuals over time, with bars of k = 2. The shading is the time within which they began"
              + " to scatter more.";
      case "altitude-trend" ->
          "Residuals against the Moon\u2019s altitude, with bars of k = 2. The heavy line is what"
              + " refraction does to a diameter across the horizon.";
      case "clock-suspect" ->
          "Where the Moon stood by computation at the times logged: altitude sighted less altitude"
              + " computed where there are sightings, else the computed altitude. The shading is the"
              + " time within which the clock went wrong.";
      case "ratio-departure" ->
          "Growth of the disc within a night, observed against computed, with bars of k = 2. The"
              + " thin line is where both are equal, the heavy line what the readings say.";
      case "swing-departure" ->
          "Size about its mean, observed against computed, with bars of k = 2. The thin line is"
              + " where both are equal, the heavy line what the readings say.";
      case "calibration-conflict" ->
          "Plate scales of the setup about their mean, with bars of k = 2: discs with dark bars are"
              + " the calibrations, rings the scale that each reading of the Moon would ask for.";
      default ->
          "Residuals over time, with bars of k = 2. The heavy lines are the levels before and after;"
              + " the shading is the time within which the change happened.";
    };
  }

  private Drawing overTime(List<Layer> judged) {
    List<Observation> seen = near();
    List<Layer> layers = new ArrayList<>(residuals(seen, o -> Figure.epochS(o.takenAt())));
    layers.addAll(judged);
    return Drawing.of(Axis.time("taken"), Axis.signed("residual", " %"), layers)
        .withBands(band())
        .withUprights(List.of(new Upright(Figure.epochS(alert.onsetAt()), "began")));
  }

  private List<Band> band() {
    return List.of(new Band(Figure.epochS(alert.onsetFrom()), Figure.epochS(alert.onsetTo())));
  }

  private List<Layer> residuals(List<Observation> seen, ToDoubleFunction<Observation> across) {
    return parted(seen, across, o -> 100 * o.residual(), o -> 200 * o.relativeUncertainty());
  }

  /** Readings, and above them those that the alert names. */
  private List<Layer> parted(
      List<Observation> seen,
      ToDoubleFunction<Observation> across,
      ToDoubleFunction<Observation> up,
      ToDoubleFunction<Observation> half) {
    List<Observation> ordered = seen.stream().sorted(Comparator.comparingDouble(across)).toList();
    List<Observation> named = ordered.stream().filter(o -> shown.contains(o.takenAt())).toList();
    List<Layer> layers = new ArrayList<>();
    layers.add(
        new Layer(
            "readings",
            Look.OBSERVED,
            Columns.of(ordered, across),
            Columns.of(ordered, up),
            Columns.of(ordered, half)));
    if (!named.isEmpty()) {
      layers.add(
          new Layer(
              "readings that show it",
              Look.SHOWN,
              Columns.of(named, across),
              Columns.of(named, up),
              null));
    }
    return layers;
  }

  /** The readings about the time that the alert speaks of. */
  private List<Observation> near() {
    Instant from = alert.onsetFrom().minus(BEFORE);
    Instant last = alert.until() == null ? alert.evidenceAt() : alert.until();
    Instant end = last.isBefore(alert.onsetTo()) ? alert.onsetTo() : last;
    Instant to = end.plus(alert.kind().equals("scale-drift") ? BEFORE : AFTER);
    return facts.observations().stream()
        .filter(o -> !o.takenAt().isBefore(from) && o.takenAt().isBefore(to))
        .toList();
  }

  private List<Layer> levels() {
    List<Observation> seen = near();
    return List.of(
        level(seen.stream().filter(o -> o.takenAt().isBefore(alert.onsetAt())).toList(), "before"),
        level(seen.stream().filter(o -> !o.takenAt().isBefore(alert.onsetAt())).toList(), "after"));
  }

  private static Layer level(List<Observation> stretch, String word) {
    if (stretch.isEmpty()) {
      return new Layer("level " + word, Look.JUDGED, List.of(), List.of(), null);
    }
    double median = ResidualLevels.medianPercent(stretch);
    Instant last = stretch.get(stretch.size() - 1).takenAt();
    return new Layer(
        "level " + word,
        Look.JUDGED,
        List.of(Figure.epochS(stretch.get(0).takenAt()), Figure.epochS(last)),
        List.of(median, median),
        null);
  }

  private Layer drift() {
    List<Observation> seen = near();
    List<Observation> before =
        seen.stream().filter(o -> o.takenAt().isBefore(alert.onsetAt())).toList();
    double level = before.isEmpty() ? 0 : ResidualLevels.medianPercent(before);
    double onset = Figure.epochS(alert.onsetAt());
    double first = seen.isEmpty() ? onset : Figure.epochS(seen.get(0).takenAt());
    double last = seen.isEmpty() ? onset : Figure.epochS(seen.get(seen.size() - 1).takenAt());
    double end = level + alert.sizePercent() * (last - onset) / THIRTY_DAYS_S;
    return new Layer(
        "drift",
        Look.JUDGED,
        List.of(Math.min(first, onset), onset, Math.max(last, onset)),
        List.of(level, level, end),
        null);
  }

  private List<Observation> concerned() {
    return facts.observations().stream()
        .filter(o -> o.setup() == alert.setup())
        .filter(o -> !o.takenAt().isBefore(alert.onsetAt()))
        .filter(o -> alert.until() == null || o.takenAt().isBefore(alert.until()))
        .toList();
  }

  private Drawing againstAltitude() {
    List<Observation> seen = concerned();
    List<Observation> ordered =
        seen.stream()
            .sorted(Comparator.comparingDouble(o -> o.sight().apparentAltitudeDeg()))
            .toList();
    double sign = Math.signum(alert.sizePercent());
    ToDoubleFunction<Observation> flattening =
        o ->
            -sign
                * 100
                * Math.log(
                    o.sight().verticalDiameterArcmin() / o.sight().horizontalDiameterArcmin());
    double offset =
        Medians.of(
            seen.stream().mapToDouble(o -> 100 * o.residual() - flattening.applyAsDouble(o)));
    List<Layer> layers = new ArrayList<>(residuals(seen, o -> o.sight().apparentAltitudeDeg()));
    layers.add(
        new Layer(
            "flattening by refraction",
            Look.JUDGED,
            Columns.of(ordered, o -> o.sight().apparentAltitudeDeg()),
            Columns.of(ordered, o -> offset + flattening.applyAsDouble(o)),
            null));
    return Drawing.of(Axis.number("altitude", "\u00b0"), Axis.signed("residual", " %"), layers);
  }

  private Drawing altitudes() {
    List<Observation> seen = near();
    List<Observation> sighted =
        seen.stream().filter(o -> o.sighted().altitudeDeg().isPresent()).toList();
    boolean few = sighted.size() < FEW_SIGHTINGS;
    List<Layer> layers =
        few
            ? parted(
                seen, o -> Figure.epochS(o.takenAt()), o -> o.sight().apparentAltitudeDeg(), o -> 0)
            : parted(
                sighted,
                o -> Figure.epochS(o.takenAt()),
                o -> o.sighted().altitudeDeg().orElse(0) - o.sight().apparentAltitudeDeg(),
                o -> 0);
    return Drawing.of(
            Axis.time("taken"),
            few
                ? Axis.number("computed altitude", "\u00b0").reaching(-5, 5)
                : Axis.signed("sighted less computed altitude", "\u00b0").reaching(-1, 1),
            layers)
        .withBands(band())
        .withUprights(List.of(new Upright(Figure.epochS(alert.onsetAt()), "began")));
  }

  private Drawing nights() {
    List<Night> nights =
        facts.nights().nights().stream()
            .sorted(Comparator.comparingDouble(Night::predictedRatio))
            .toList();
    List<Double> across = Columns.of(nights, n -> 100 * Math.log(n.predictedRatio()));
    List<Layer> layers = new ArrayList<>(slopes(across, facts.nights().summary().slope()));
    layers.add(
        new Layer(
            "nights",
            Look.OBSERVED,
            across,
            Columns.of(nights, n -> 100 * Math.log(n.observedRatio())),
            Columns.of(nights, n -> 200 * n.uncertainty() / n.observedRatio())));
    return Drawing.of(
        Axis.signed("computed growth", " %"), Axis.signed("observed growth", " %"), layers);
  }

  private Drawing sizes() {
    List<Observation> seen = facts.observations();
    double predicted = Medians.of(seen.stream().mapToDouble(o -> Math.log(o.predictedArcmin())));
    double observed = Medians.of(seen.stream().mapToDouble(o -> Math.log(o.observedArcmin())));
    ToDoubleFunction<Observation> across = o -> 100 * (Math.log(o.predictedArcmin()) - predicted);
    List<Observation> ordered = seen.stream().sorted(Comparator.comparingDouble(across)).toList();
    List<Layer> layers =
        new ArrayList<>(slopes(Columns.of(ordered, across), facts.cycle().swing().slope()));
    layers.addAll(
        parted(
            seen,
            across,
            o -> 100 * (Math.log(o.observedArcmin()) - observed),
            o -> 200 * o.relativeUncertainty()));
    return Drawing.of(
        Axis.signed("computed, about the mean", " %"),
        Axis.signed("observed, about the mean", " %"),
        layers);
  }

  /** Where observed equals computed, and what the readings say instead. */
  private static List<Layer> slopes(List<Double> across, @Nullable Double slope) {
    if (across.isEmpty()) {
      return List.of();
    }
    List<Double> ends = List.of(across.get(0), across.get(across.size() - 1));
    List<Layer> layers = new ArrayList<>();
    layers.add(new Layer("as computed", Look.LINE, ends, ends, null));
    if (slope != null) {
      layers.add(
          new Layer(
              "as the readings say", Look.JUDGED, ends, Columns.of(ends, x -> slope * x), null));
    }
    return layers;
  }

  private Drawing calibrations() {
    InstrumentHistory instrument = history.get();
    List<RecordedCalibration> its =
        instrument.calibrations().stream().filter(c -> c.setup() == alert.setup()).toList();
    double mean =
        instrument
            .scaleOf(
                instrument.setups().get(Math.min(alert.setup(), instrument.setups().size() - 1)))
            .map(scale -> scale.scale().arcsecPerUnit())
            .orElse(1.0);
    List<Observation> seen =
        facts.observations().stream().filter(o -> o.setup() == alert.setup()).toList();
    int[] kept =
        Cells.indexes(
            seen.size(), i -> Figure.epochS(seen.get(i).takenAt()), i -> seen.get(i).residual());
    List<Observation> drawn = IntStream.of(kept).mapToObj(seen::get).toList();
    return Drawing.of(
            Axis.time("taken"),
            Axis.signed("plate scale about its mean", " %"),
            List.of(
                new Layer(
                    "asked for by the Moon",
                    Look.INFERRED,
                    Columns.of(drawn, o -> Figure.epochS(o.takenAt())),
                    Columns.of(drawn, o -> -100 * o.residual()),
                    Columns.of(drawn, o -> 200 * o.relativeUncertainty())),
                new Layer(
                    "calibrations",
                    Look.OBSERVED,
                    Columns.of(its, c -> Figure.epochS(c.takenAt())),
                    Columns.of(its, c -> 100 * Math.log(c.plateScale().arcsecPerUnit() / mean)),
                    Columns.of(its, c -> 200 * c.plateScale().relativeUncertainty()))))
        .withUprights(List.of(new Upright(Figure.epochS(alert.onsetAt()), "does not fit")));
  }
}

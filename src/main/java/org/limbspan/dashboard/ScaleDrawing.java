package org.limbspan.dashboard;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.limbspan.dashboard.Drawing.Axis;
import org.limbspan.dashboard.Drawing.Layer;
import org.limbspan.dashboard.Drawing.Look;
import org.limbspan.dashboard.Drawing.Upright;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.rig.Setup;
import org.limbspan.scale.MeanScale;
import org.limbspan.watch.InferredReadings.InferredSetup;

/** The plate scale through time: calibrations, the mean of each setup, and scales inferred. */
final class ScaleDrawing {

  private static final Duration EDGE = Duration.ofDays(10);

  private final InstrumentFacts facts;
  private final String unit;
  private final Instant first;
  private final Instant last;

  private ScaleDrawing(InstrumentFacts facts) {
    this.facts = facts;
    this.unit = facts.unitSymbol();
    List<Instant> instants =
        Stream.of(
                facts.history().calibrations().stream().map(RecordedCalibration::takenAt),
                facts.history().setups().stream().flatMap(setup -> setup.startedAt().stream()),
                facts.inferred().stream()
                    .flatMap(setup -> setup.readings().stream())
                    .map(each -> each.reading().takenAt()))
            .flatMap(stream -> stream)
            .sorted()
            .toList();
    this.first = instants.isEmpty() ? Instant.EPOCH : instants.get(0).minus(EDGE);
    this.last = instants.isEmpty() ? Instant.EPOCH : instants.get(instants.size() - 1).plus(EDGE);
  }

  /** The figure; scales in another unit than the latest are left out. */
  static Drawing of(InstrumentFacts facts) {
    ScaleDrawing scale = new ScaleDrawing(facts);
    return Drawing.of(
            Axis.time("taken"), Axis.number("plate scale", "\u2033/" + scale.unit), scale.layers())
        .withUprights(
            facts.history().setups().stream()
                .filter(setup -> setup.startedAt().isPresent())
                .map(
                    setup ->
                        new Upright(
                            Figure.epochS(setup.startedAt().orElseThrow()),
                            "setup " + (setup.number() + 1)))
                .toList());
  }

  private List<Layer> layers() {
    List<Layer> layers = new ArrayList<>();
    for (Setup setup : facts.history().setups()) {
      mean(setup).ifPresent(layers::add);
      inferred(setup).ifPresent(layers::add);
    }
    List<RecordedCalibration> drawn =
        facts.history().calibrations().stream()
            .filter(each -> each.plateScale().unit().symbol().equals(unit))
            .sorted(Comparator.comparing(RecordedCalibration::takenAt))
            .toList();
    layers.add(
        new Layer(
            "calibrations",
            Look.OBSERVED,
            Columns.of(drawn, each -> Figure.epochS(each.takenAt())),
            Columns.of(drawn, each -> each.plateScale().arcsecPerUnit()),
            Columns.of(drawn, each -> 2 * each.plateScale().uncertainty())));
    return layers;
  }

  private Optional<Layer> mean(Setup setup) {
    return facts
        .history()
        .scaleOf(setup)
        .map(MeanScale::scale)
        .filter(scale -> scale.unit().symbol().equals(unit))
        .map(scale -> level("mean of setup ", setup, Look.JUDGED, scale.arcsecPerUnit()));
  }

  private Optional<Layer> inferred(Setup setup) {
    return facts
        .inferredOf(setup)
        .filter(its -> its.unitSymbol().equals(unit))
        .map(InferredSetup::arcsecPerUnit)
        .map(scale -> level("taken from the Moon, setup ", setup, Look.BROKEN, scale));
  }

  private Layer level(String words, Setup setup, Look look, double value) {
    List<Double> ends =
        List.of(
            Figure.epochS(setup.startedAt().orElse(first)),
            Figure.epochS(setup.endedAt().orElse(last)));
    return new Layer(
        words + (setup.number() + 1), look, ends, Columns.of(ends, end -> value), null);
  }
}

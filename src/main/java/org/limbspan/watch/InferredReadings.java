package org.limbspan.watch;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toList;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.limbspan.cycle.Observation;
import org.limbspan.reading.Readings;
import org.limbspan.reading.RecordedReading;
import org.limbspan.rig.InstrumentHistory;
import org.limbspan.rig.Rig;
import org.limbspan.sky.Sky;
import org.springframework.stereotype.Service;

/**
 * Readings of setups that have no calibration. Their plate scale is taken from the computed Moon,
 * so that their absolute size is not independent of it; swing and ratio are.
 */
@Service
public class InferredReadings {

  /** Later than any ephemeris. */
  private static final Instant FAR = Instant.parse("2200-01-01T00:00:00Z");

  private final Readings readings;
  private final Sky sky;

  InferredReadings(Readings readings, Sky sky) {
    this.readings = readings;
    this.sky = sky;
  }

  /**
   * One setup at its inferred scale.
   *
   * @param arcsecPerUnit the median of computed size over measured length
   * @param unitSymbol {@code px} or {@code mm}
   */
  public record InferredSetup(
      int setup, double arcsecPerUnit, String unitSymbol, List<Inferred> readings) {

    public InferredSetup {
      readings = List.copyOf(readings);
    }
  }

  /** A reading as entered and at the inferred scale. */
  public record Inferred(RecordedReading reading, Observation observation) {}

  /** Every setup without calibration that holds a reading, by number. */
  public List<InferredSetup> of(InstrumentHistory history) {
    return of(history, unscaled(history));
  }

  /**
   * The same.
   *
   * @param unscaled lengths that no calibration makes an angle, see {@link Readings#standing}
   */
  public List<InferredSetup> of(InstrumentHistory history, List<RecordedReading> unscaled) {
    Rig rig = history.rig();
    Map<Integer, List<UnscaledReading>> bySetup =
        unscaled.stream()
            .filter(reading -> history.scaleOf(history.setupAt(reading.takenAt())).isEmpty())
            .map(
                reading ->
                    new UnscaledReading(
                        reading,
                        history.setupAt(reading.takenAt()).number(),
                        sky.moonAt(reading.takenAt(), rig.site())))
            .collect(groupingBy(UnscaledReading::setup, TreeMap::new, toList()));
    List<InferredSetup> setups = new ArrayList<>();
    bySetup.forEach((number, its) -> setups.add(setup(number, its)));
    return setups;
  }

  private static InferredSetup setup(int number, List<UnscaledReading> its) {
    List<Observation> observations = InferredScale.observations(its);
    List<Inferred> readings = new ArrayList<>();
    for (int i = 0; i < its.size(); i++) {
      readings.add(new Inferred(its.get(i).reading(), observations.get(i)));
    }
    return new InferredSetup(
        number,
        60 * InferredScale.medianArcminPerUnit(its),
        its.get(0).reading().diameter().unit().symbol(),
        readings);
  }

  /** As entered: those of setups without calibration, but for those entered in arcminutes. */
  private List<RecordedReading> unscaled(InstrumentHistory history) {
    return unscaled(history, readings::between);
  }

  /** The same, for one who asks again with every reading; see {@link Readings#betweenAgain}. */
  List<RecordedReading> unscaledAgain(InstrumentHistory history) {
    return unscaled(history, readings::betweenAgain);
  }

  /** The readings of a rig in a stretch of time. */
  private interface Span {
    List<RecordedReading> of(long rigId, Instant from, Instant to);
  }

  private static List<RecordedReading> unscaled(InstrumentHistory history, Span span) {
    return history.setups().stream()
        .filter(setup -> history.scaleOf(setup).isEmpty())
        .flatMap(
            setup ->
                span
                    .of(
                        history.rig().id(),
                        setup.startedAt().orElse(Instant.EPOCH),
                        setup.endedAt().orElse(FAR))
                    .stream())
        .filter(reading -> reading.diameter().unit().length().isPresent())
        .toList();
  }
}

package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.limbspan.dashboard.ReadingSheet.Fact;
import org.limbspan.demo.Demo;
import org.limbspan.photo.KeptPhoto;
import org.limbspan.photo.Photos;
import org.limbspan.platform.NotFound;
import org.limbspan.reading.Circumstances;
import org.limbspan.reading.DiameterUnit;
import org.limbspan.reading.Readings;
import org.limbspan.reading.RecordedReading;
import org.limbspan.reading.StandardisedReading;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.scale.Measured;
import org.springframework.stereotype.Component;

/** Lays out the page of a reading. */
@Component
class ReadingSheets {

  private final Rigs rigs;
  private final Readings readings;
  private final Photos photos;
  private final RefusedFiles refusedFiles;

  ReadingSheets(Rigs rigs, Readings readings, Photos photos, RefusedFiles refusedFiles) {
    this.rigs = rigs;
    this.readings = readings;
    this.photos = photos;
    this.refusedFiles = refusedFiles;
  }

  /**
   * The page of a reading.
   *
   * @throws NotFound if the rig or the reading is not there
   */
  ReadingSheet of(String slug, long id) {
    Rig rig = rigs.find(slug);
    RecordedReading reading =
        readings.find(rig.id(), id).orElseThrow(() -> new NotFound("reading", "id", id));
    RigTime time = new RigTime(rig.timeZone());
    FrameSheets words = new FrameSheets(slug, time);
    List<KeptPhoto> frames = photos.ofReading(rig, id);
    return new ReadingSheet(
        rig.slug(),
        rig.name(),
        Demo.invented(rig),
        time.minute(reading.takenAt()),
        rig.timeZone().getId(),
        standing(rig, reading),
        facts(reading, readings.standardise(rig.id(), reading)),
        notes(reading.circumstances()),
        IntStream.range(0, frames.size()).mapToObj(i -> words.of(i + 1, frames.get(i))).toList(),
        frames.isEmpty() ? List.of() : refusedFiles.beside(rig, reading.takenAt()));
  }

  private String standing(Rig rig, RecordedReading reading) {
    boolean stands =
        readings.between(rig.id(), reading.takenAt(), reading.takenAt().plusNanos(1000)).stream()
            .anyMatch(each -> each.id() == reading.id());
    return stands
        ? ""
        : "This reading does not stand any more: it was superseded or taken back. It is kept as it"
            + " was entered.";
  }

  private static List<Fact> facts(
      RecordedReading reading, Optional<StandardisedReading> standardised) {
    List<Fact> facts = new ArrayList<>();
    if (reading.diameter().unit() != DiameterUnit.ARCMINUTE) {
      facts.add(
          new Fact(
              "measured",
              Typeset.pair(
                      new Measured(reading.diameter().value(), reading.diameter().uncertainty()))
                  + " "
                  + reading.diameter().unit().symbol()));
    }
    standardised.ifPresentOrElse(
        its -> facts.addAll(besideComputed(its)),
        () ->
            facts.add(
                new Fact("observed", "waits for a calibration of its setup to become an angle")));
    facts.add(new Fact("axis", reading.axis().label()));
    return facts;
  }

  private static List<Fact> besideComputed(StandardisedReading its) {
    Measured observed = new Measured(its.diameterArcmin(), its.uncertaintyArcmin());
    Measured computed = new Measured(its.predictedArcmin(), its.uncertaintyArcmin());
    return List.of(
        new Fact("observed", Typeset.pair(observed) + "\u2032, plate scale included"),
        new Fact("computed", computed.valueText() + "\u2032"),
        new Fact(
            "residual",
            Typeset.signedPair(
                    new Measured(its.residualPercent(), its.residualUncertaintyPercent()))
                + " %"),
        new Fact(
            "altitude", Typeset.places(its.sight().apparentAltitudeDeg(), 1) + "\u00b0, computed"));
  }

  private static List<String> notes(Circumstances circumstances) {
    return Stream.of(circumstances.sky(), circumstances.note()).filter(Objects::nonNull).toList();
  }
}

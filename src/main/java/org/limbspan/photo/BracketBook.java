package org.limbspan.photo;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.limbspan.photo.bracket.Brackets;
import org.limbspan.photo.bracket.CombinedFrames;
import org.limbspan.photo.bracket.Frame;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.NotFound;
import org.limbspan.platform.Violation;
import org.limbspan.reading.BadLines;
import org.limbspan.reading.Circumstances;
import org.limbspan.reading.Diameter;
import org.limbspan.reading.DiameterUnit;
import org.limbspan.reading.IntakeReport;
import org.limbspan.reading.NewReading;
import org.limbspan.reading.Readings;
import org.limbspan.reading.RecordedReading;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.stereotype.Component;

/**
 * Keeps the ledger's readings in line with the photographs held: what they ask for is computed anew
 * from all of them, so that the order in which they arrived leaves no trace in what stands.
 *
 * <p>What is to be entered is written down first, then entered, then ticked off. A crash in between
 * leaves a plan that the next round, at the latest at the next start, carries out; the ledger takes
 * the same reading only once.
 */
@Component
class BracketBook {

  private final Rigs rigs;
  private final Readings readings;
  private final FrameStore frames;
  private final PhotoReadingStore book;
  private final RigQueue queue;
  private final Clock clock;

  BracketBook(
      Rigs rigs,
      Readings readings,
      FrameStore frames,
      PhotoReadingStore book,
      RigQueue queue,
      Clock clock) {
    this.rigs = rigs;
    this.readings = readings;
    this.frames = frames;
    this.book = book;
    this.queue = queue;
    this.clock = clock;
  }

  /**
   * The readings that the photographs of a rig make.
   *
   * @param refusals why the ledger did not take one, by its id in this book
   */
  record InLine(List<PhotoReading> readings, Map<Long, Violation> refusals) {}

  /** Enters what is missing and takes back what the photographs ask for no more. */
  InLine bringInLine(Rig rig) {
    return queue.alone(
        rig.id(),
        () -> {
          List<Frame> held = frames.frames(rig.id(), rigs.history(rig));
          List<PlannedReading> asked = Brackets.of(held).stream().map(PlannedReading::of).toList();
          plan(rig, asked);
          Map<Long, Violation> refusals = enter(rig, asked);
          return new InLine(book.planned(rig.id()), refusals);
        });
  }

  private void plan(Rig rig, List<PlannedReading> asked) {
    List<PhotoReading> standing = book.planned(rig.id());
    List<PlannedReading> missing = new ArrayList<>(asked);
    for (PhotoReading each : standing) {
      if (!missing.removeIf(each::equalsIn)) {
        retire(rig, each, asked);
      }
    }
    missing.forEach(planned -> book.insert(rig.id(), planned, now()));
  }

  /** Takes a reading back, unless another one is to supersede it in its very place. */
  private void retire(Rig rig, PhotoReading stale, List<PlannedReading> asked) {
    boolean superseded = asked.stream().anyMatch(stale::sharesPlaceWith);
    Optional<RecordedReading> entered = standing(rig, stale);
    if (entered.isPresent() && !superseded) {
      withdraw(rig, entered.get());
    }
    book.retire(stale.id(), now());
  }

  private void withdraw(Rig rig, RecordedReading reading) {
    try {
      readings.withdraw(
          rig,
          reading.id(),
          "superseded: the photographs of these ten minutes make another reading now");
    } catch (Conflict | NotFound changedMeanwhile) {
      // somebody else superseded it or took it back: it does not stand any more
      return;
    }
  }

  private Map<Long, Violation> enter(Rig rig, List<PlannedReading> asked) {
    Map<Long, Violation> refusals = new HashMap<>();
    for (PhotoReading each : book.planned(rig.id())) {
      if (each.readingId() == null) {
        asked.stream()
            .filter(each::equalsIn)
            .findFirst()
            .flatMap(its -> enter(rig, each, its))
            .ifPresent(refusal -> refusals.put(each.id(), refusal));
      }
    }
    return refusals;
  }

  private Optional<Violation> enter(Rig rig, PhotoReading plan, PlannedReading planned) {
    OnConflict conflict =
        book.everEntered(rig.id(), plan.takenAt(), plan.axis())
            ? OnConflict.SUPERSEDE
            : OnConflict.REFUSE;
    IntakeReport report =
        readings.record(rig, List.of(reading(planned, conflict)), BadLines.KEEP_GOOD);
    if (report.refused() > 0) {
      return report.rejected().stream().findFirst();
    }
    standing(rig, plan).ifPresent(entered -> book.markEntered(plan.id(), entered.id()));
    return Optional.empty();
  }

  /** The reading that stands in a plan's place, if photographs made it. */
  private Optional<RecordedReading> standing(Rig rig, PhotoReading plan) {
    Instant at = plan.takenAt();
    return readings.between(rig.id(), at, at.plus(1, ChronoUnit.MICROS)).stream()
        .filter(reading -> reading.axis() == plan.axis())
        .filter(reading -> reading.diameter().equals(diameter(plan)))
        .findFirst();
  }

  private static Diameter diameter(PhotoReading plan) {
    return new Diameter(plan.diameterPx(), plan.uncertaintyPx(), DiameterUnit.PIXEL);
  }

  private static NewReading reading(PlannedReading planned, OnConflict conflict) {
    CombinedFrames combined = planned.combined();
    return new NewReading(
        combined.takenAt(),
        planned.axis(),
        new Diameter(combined.diameterPx(), combined.uncertaintyPx(), DiameterUnit.PIXEL),
        combined.used().stream().map(Frame::diameterPx).toList(),
        new Circumstances(null, null, null, null, null, null, BracketWords.note(combined)),
        conflict,
        null);
  }

  private Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MICROS);
  }
}

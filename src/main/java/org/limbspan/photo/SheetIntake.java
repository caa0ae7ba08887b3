package org.limbspan.photo;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.limbspan.photo.PhotoExaminer.Examined;
import org.limbspan.platform.Unavailable;
import org.limbspan.rig.Entered;
import org.limbspan.rig.NewCalibration;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * Takes photographs of a calibration target: each is measured, then all that are good are entered
 * as calibrations, and their originals kept.
 */
@Component
class SheetIntake {

  private static final Logger LOG = LoggerFactory.getLogger(SheetIntake.class);

  private final PhotoExaminer examiner;
  private final PhotoStore store;
  private final Darkroom darkroom;
  private final OriginalFiles originals;
  private final Rigs rigs;

  SheetIntake(
      PhotoExaminer examiner,
      PhotoStore store,
      Darkroom darkroom,
      OriginalFiles originals,
      Rigs rigs) {
    this.examiner = examiner;
    this.store = store;
    this.darkroom = darkroom;
    this.originals = originals;
    this.rigs = rigs;
  }

  /** A photograph that gives a length, and its place among the files. */
  private record Found(int place, Examined examined, NewCalibration calibration) {

    String name() {
      return examined.photo().name();
    }

    /** Whether that calibration stands in the ledger, or stood, as made of this very file. */
    boolean isNamedIn(RecordedCalibration calibration) {
      return calibration.note() != null && calibration.note().contains(examined.sha256());
    }
  }

  /** What becomes of files, in their order. */
  List<SheetAnswer> take(
      Rig rig, List<IncomingPhoto> photos, SheetTarget target, PhotoOptions options) {
    FocalLengths focalLengths =
        new FocalLengths(rigs.history(rig)::setupAt, store.focalLengths(rig.id()), rig.timeZone());
    List<SheetAnswer> answers = new ArrayList<>();
    List<Found> found = new ArrayList<>();
    for (IncomingPhoto photo : photos) {
      try {
        Examined examined = examiner.examine(rig, photo, options);
        focalLengths.take(examined.instant().at(), examined.header().shot().focalLengthMm());
        SheetFigures figures =
            SheetFigures.of(
                target, darkroom.measureSheet(photo.file(), examined.header(), target.options()));
        Integer line = photos.size() > 1 ? answers.size() + 1 : null;
        found.add(
            new Found(answers.size(), examined, calibration(examined, figures, options, line)));
        answers.add(SheetAnswer.measured(photo.name(), examined.instant().at(), figures));
      } catch (RefusedPhoto refused) {
        answers.add(SheetAnswer.refused(photo.name(), options.takenAt(), refused));
      } catch (IOException e) {
        throw notStored(photo.name(), e);
      }
    }
    if (options.purpose() == PhotoOptions.Purpose.KEEP && !found.isEmpty()) {
      enter(rig, found, answers);
    }
    return answers;
  }

  /**
   * Enters all or none. The originals are on the disk before, and get their names after: what is
   * refused leaves no file that nothing speaks of, and a full disk no calibration without its file.
   */
  private void enter(Rig rig, List<Found> found, List<SheetAnswer> answers) {
    try (OriginalFiles.Aside aside = originals.aside()) {
      found.forEach(each -> lay(each, aside));
      List<Entered<RecordedCalibration>> entered =
          rigs.record(rig, found.stream().map(Found::calibration).toList());
      List<String> lost = new ArrayList<>();
      for (int i = 0; i < entered.size(); i++) {
        Found its = found.get(i);
        answers.set(its.place(), answers.get(its.place()).with(entered.get(i)));
        if (its.isNamedIn(entered.get(i).fact()) && !isKept(its, aside)) {
          lost.add(its.name());
        }
      }
      if (!lost.isEmpty()) {
        throw new Unavailable(
            "The calibrations are entered, but these files cannot be kept just now: "
                + String.join(", ", lost)
                + ". Send them again: they are kept then, and no calibration is entered twice.");
      }
    }
  }

  private static void lay(Found its, OriginalFiles.Aside aside) {
    Examined examined = its.examined();
    try {
      aside.lay(examined.photo().file(), examined.sha256(), examined.header().format());
    } catch (IOException e) {
      throw notStored(its.name(), e);
    }
  }

  private static boolean isKept(Found its, OriginalFiles.Aside aside) {
    Examined examined = its.examined();
    try {
      aside.keep(examined.sha256(), examined.header().format());
      return true;
    } catch (IOException e) {
      LOG.error("calibration photograph {} cannot be kept", examined.sha256(), e);
      return false;
    }
  }

  private static Unavailable notStored(String name, IOException e) {
    LOG.error("calibration photograph {} cannot be read or kept", name, e);
    return new Unavailable(
        "The file " + name + " cannot be read or kept just now; nothing was stored.");
  }

  private static NewCalibration calibration(
      Examined examined, SheetFigures figures, PhotoOptions options, @Nullable Integer line) {
    return new NewCalibration(
        examined.instant().at(),
        figures.calibration(),
        SheetWords.note(examined.photo().name(), examined.sha256(), figures),
        options.conflict(),
        line);
  }
}

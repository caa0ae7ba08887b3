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

  /** What becomes of files, in their order. */
  List<SheetAnswer> take(
      Rig rig, List<IncomingPhoto> photos, SheetTarget target, PhotoOptions options) {
    FocalLengths focalLengths =
        new FocalLengths(rigs.history(rig)::setupAt, store.focalLengths(rig.id()));
    List<SheetAnswer> answers = new ArrayList<>();
    List<NewCalibration> found = new ArrayList<>();
    List<Integer> places = new ArrayList<>();
    for (IncomingPhoto photo : photos) {
      try {
        Examined examined = examiner.examine(rig, photo, options);
        focalLengths.take(examined.instant().at(), examined.header().shot().focalLengthMm());
        SheetFigures figures =
            SheetFigures.of(
                target, darkroom.measureSheet(photo.file(), examined.header(), target.options()));
        if (options.purpose() == PhotoOptions.Purpose.KEEP) {
          originals.keep(photo.file(), examined.sha256(), examined.header().format());
        }
        places.add(answers.size());
        Integer line = photos.size() > 1 ? answers.size() + 1 : null;
        found.add(calibration(examined, figures, options, line));
        answers.add(SheetAnswer.measured(photo.name(), examined.instant().at(), figures));
      } catch (RefusedPhoto refused) {
        answers.add(SheetAnswer.refused(photo.name(), options.takenAt(), refused));
      } catch (IOException e) {
        LOG.error("calibration photograph {} cannot be read or kept", photo.file(), e);
        throw new Unavailable(
            "The file " + photo.name() + " cannot be read or kept just now; nothing was stored.");
      }
    }
    if (options.purpose() == PhotoOptions.Purpose.KEEP && !found.isEmpty()) {
      List<Entered<RecordedCalibration>> entered = rigs.record(rig, found);
      for (int i = 0; i < entered.size(); i++) {
        int place = places.get(i);
        answers.set(place, answers.get(place).with(entered.get(i)));
      }
    }
    return answers;
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

package org.limbspan.dashboard;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.limbspan.photo.IncomingPhoto;
import org.limbspan.photo.PhotoAnswer;
import org.limbspan.photo.Photos;
import org.limbspan.reading.Readings;
import org.limbspan.reading.RecordedReading;
import org.limbspan.rig.Rig;
import org.limbspan.scale.Measured;
import org.springframework.stereotype.Component;

/** Has photographs measured and says what became of them. */
@Component
class PhotoBatches {

  private final Photos photos;
  private final Readings readings;

  PhotoBatches(Photos photos, Readings readings) {
    this.photos = photos;
    this.readings = readings;
  }

  /** Hears of each file as soon as it is measured or refused. */
  interface Listener {
    void told(PhotoLine line);
  }

  /** Takes the files of a form without complaints. */
  PhotoBatch take(Rig rig, List<IncomingPhoto> files, PhotoForm form, Listener listener) {
    RigTime time = new RigTime(rig.timeZone());
    PhotoWords words = new PhotoWords(rig.slug(), time, form.typed());
    List<PhotoAnswer> answers =
        photos.take(
            rig,
            files,
            form.options(time),
            (place, answer) -> listener.told(words.line(place, answer)));
    List<ReadingLine> made =
        answers.stream()
            .map(PhotoAnswer::kept)
            .filter(Objects::nonNull)
            .map(PhotoAnswer.Kept::readingId)
            .filter(Objects::nonNull)
            .distinct()
            .map(id -> readings.find(rig.id(), id))
            .flatMap(Optional::stream)
            .sorted(Comparator.comparing(RecordedReading::takenAt))
            .map(reading -> line(rig, reading, time))
            .toList();
    return new PhotoBatch(PhotoWords.summary(answers), words.lines(answers), made);
  }

  private static ReadingLine line(Rig rig, RecordedReading reading, RigTime time) {
    Measured diameter = new Measured(reading.diameter().value(), reading.diameter().uncertainty());
    return new ReadingLine(
        PhotoWords.address(rig.slug(), reading.id()),
        time.minute(reading.takenAt()),
        Typeset.count(reading.frames().size(), "frame")
            + ", "
            + Typeset.unbroken(Typeset.pair(diameter) + " px"));
  }
}

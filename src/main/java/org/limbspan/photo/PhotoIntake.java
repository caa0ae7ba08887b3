package org.limbspan.photo;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.photo.PhotoExaminer.Examined;
import org.limbspan.platform.Unavailable;
import org.limbspan.rig.Rig;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * Takes files that were sent together: each is measured, then all that are good are kept at once.
 */
@Component
class PhotoIntake {

  private static final Logger LOG = LoggerFactory.getLogger(PhotoIntake.class);

  private final PhotoExaminer examiner;
  private final PhotoMeasuring measuring;
  private final OriginalFiles originals;
  private final PhotoWriter writer;
  private final BracketBook book;
  private final RigQueue queue;
  private final PhotoMeters meters;

  PhotoIntake(
      PhotoExaminer examiner,
      PhotoMeasuring measuring,
      OriginalFiles originals,
      PhotoWriter writer,
      BracketBook book,
      RigQueue queue,
      PhotoMeters meters) {
    this.examiner = examiner;
    this.measuring = measuring;
    this.originals = originals;
    this.writer = writer;
    this.book = book;
    this.queue = queue;
    this.meters = meters;
  }

  /** What becomes of files, in their order. */
  List<PhotoAnswer> take(
      Rig rig, List<IncomingPhoto> photos, PhotoOptions options, PhotoProgress progress) {
    if (options.purpose() == PhotoOptions.Purpose.TRY) {
      return measure(rig, photos, options, progress).answers();
    }
    return queue.alone(
        rig.id(),
        () -> {
          Batch batch = measure(rig, photos, options, progress);
          Map<String, PhotoAnswer> refused = refused(batch);
          keep(rig, batch, options);
          if (!refused.isEmpty()) {
            writer.refuse(rig, refused);
          }
          return inReadings(rig, batch.answers());
        });
  }

  private Batch measure(
      Rig rig, List<IncomingPhoto> photos, PhotoOptions options, PhotoProgress progress) {
    Batch batch = new Batch(photos, progress);
    List<Place> places = new ArrayList<>();
    for (int i = 0; i < photos.size(); i++) {
      try {
        places.add(new Place(i, examiner.examine(rig, photos.get(i), options)));
      } catch (RefusedPhoto refused) {
        batch.answer(i, PhotoAnswer.refused(photos.get(i).name(), options.takenAt(), refused));
      } catch (IOException e) {
        throw unreadable(photos.get(i), e);
      }
    }
    places.sort(Comparator.comparing(Place::takenAtAndName));
    PhotoMeasuring.Session session = measuring.session(rig, options);
    for (Place place : places) {
      measure(place, session, batch);
    }
    meters.took(batch.answers());
    return batch;
  }

  private static void measure(Place place, PhotoMeasuring.Session session, Batch batch) {
    Examined examined = place.examined();
    String name = examined.photo().name();
    Optional<PhotoAnswer> twin = batch.answerOf(examined.sha256());
    if (twin.isPresent()) {
      batch.answer(place.index(), examined, twin.get().named(name));
      return;
    }
    try {
      batch.answer(place.index(), examined, session.measure(examined));
    } catch (RefusedPhoto refused) {
      batch.answer(
          place.index(), examined, PhotoAnswer.refused(name, examined.instant().at(), refused));
    } catch (IOException e) {
      throw unreadable(examined.photo(), e);
    }
  }

  private void keep(Rig rig, Batch batch, PhotoOptions options) {
    List<Examined> fresh = batch.toKeep();
    List<NewPhoto> photos = new ArrayList<>();
    for (Examined examined : fresh) {
      try {
        originals.keep(examined.photo().file(), examined.sha256(), examined.header().format());
      } catch (IOException e) {
        LOG.error("photograph {} of rig {} cannot be kept", examined.sha256(), rig.id(), e);
        throw new Unavailable(
            "The photographs cannot be written to the disk just now; nothing was stored.");
      }
      photos.add(newPhoto(examined, batch));
    }
    List<Long> ids = writer.enter(rig, photos, options.conflict());
    for (int i = 0; i < ids.size(); i++) {
      batch.kept(fresh.get(i).sha256(), ids.get(i));
    }
  }

  /** By the hash of each file; to be asked before anything is stored, since a file may be gone. */
  private static Map<String, PhotoAnswer> refused(Batch batch) {
    Map<String, PhotoAnswer> refused = new LinkedHashMap<>();
    for (int i = 0; i < batch.answers.length; i++) {
      if (!batch.answers[i].isMeasured()) {
        refused.put(batch.sha256(i), batch.answers[i]);
      }
    }
    return refused;
  }

  private static NewPhoto newPhoto(Examined examined, Batch batch) {
    PhotoAnswer.Measured measured =
        Objects.requireNonNull(batch.answerOf(examined.sha256()).orElseThrow().measured());
    return new NewPhoto(
        examined.sha256(),
        examined.photo().name(),
        examined.byteCount(),
        examined.header(),
        examined.instant(),
        measured.axis(),
        measured.figures());
  }

  private List<PhotoAnswer> inReadings(Rig rig, List<PhotoAnswer> answers) {
    if (answers.stream().allMatch(answer -> answer.kept() == null)) {
      return answers;
    }
    BracketBook.InLine inLine = book.bringInLine(rig);
    return answers.stream().map(answer -> inReading(answer, inLine)).toList();
  }

  private static PhotoAnswer inReading(PhotoAnswer answer, BracketBook.InLine inLine) {
    PhotoAnswer.Kept kept = answer.kept();
    if (kept == null) {
      return answer;
    }
    for (PhotoReading reading : inLine.readings()) {
      if (reading.holds(kept.photoId())) {
        List<String> remarks = new ArrayList<>(reading.remarks());
        Optional.ofNullable(inLine.refusals().get(reading.id()))
            .ifPresent(
                refusal ->
                    remarks.add(
                        "The ledger did not take the reading: "
                            + refusal.field()
                            + " is "
                            + refusal.value()
                            + "; expected "
                            + refusal.expected()
                            + "."));
        PhotoAnswer.Use use =
            reading.photoIds().contains(kept.photoId())
                ? PhotoAnswer.Use.USED
                : PhotoAnswer.Use.SET_ASIDE;
        return answer.with(
            new PhotoAnswer.Kept(kept.photoId(), kept.heldBefore(), reading.readingId(), use),
            remarks);
      }
    }
    return answer;
  }

  private static Unavailable unreadable(IncomingPhoto photo, IOException e) {
    LOG.error("file {} cannot be read", photo.file(), e);
    return new Unavailable(
        "The file " + photo.name() + " cannot be read just now; nothing was stored.");
  }

  private record Place(int index, Examined examined) {

    String takenAtAndName() {
      return examined.instant().at() + " " + examined.photo().name();
    }
  }

  /** The files of one request and what became of them so far. */
  private static final class Batch {

    private final List<IncomingPhoto> photos;
    private final PhotoProgress progress;
    private final PhotoAnswer[] answers;
    private final @Nullable String[] sha256;
    private final Map<String, List<Integer>> bySha256 = new LinkedHashMap<>();
    private final Map<String, Examined> examined = new LinkedHashMap<>();

    Batch(List<IncomingPhoto> photos, PhotoProgress progress) {
      this.photos = photos;
      this.progress = progress;
      answers = new PhotoAnswer[photos.size()];
      sha256 = new String[photos.size()];
    }

    void answer(int index, PhotoAnswer answer) {
      answers[index] = answer;
      progress.told(index, answer);
    }

    void answer(int index, Examined its, PhotoAnswer answer) {
      bySha256.computeIfAbsent(its.sha256(), sha -> new ArrayList<>()).add(index);
      examined.putIfAbsent(its.sha256(), its);
      sha256[index] = its.sha256();
      answer(index, answer);
    }

    /** Of a file in its place; read once, also of one that could not be examined. */
    String sha256(int index) {
      String known = sha256[index];
      if (known != null) {
        return known;
      }
      try {
        return OriginalFiles.sha256(photos.get(index).file());
      } catch (IOException e) {
        throw unreadable(photos.get(index), e);
      }
    }

    Optional<PhotoAnswer> answerOf(String sha256) {
      List<Integer> places = bySha256.getOrDefault(sha256, List.of());
      return places.isEmpty() ? Optional.empty() : Optional.of(answers[places.get(0)]);
    }

    /** Measured and not held yet. */
    List<Examined> toKeep() {
      return examined.values().stream()
          .filter(
              each -> {
                PhotoAnswer answer = answerOf(each.sha256()).orElseThrow();
                return answer.isMeasured() && answer.kept() == null;
              })
          .toList();
    }

    void kept(String sha256, long photoId) {
      List<Integer> places = bySha256.getOrDefault(sha256, List.of());
      for (int n = 0; n < places.size(); n++) {
        int index = places.get(n);
        answers[index] =
            answers[index].with(new PhotoAnswer.Kept(photoId, n > 0, null, null), List.of());
      }
    }

    List<PhotoAnswer> answers() {
      return List.of(answers);
    }
  }
}

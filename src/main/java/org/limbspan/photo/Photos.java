package org.limbspan.photo;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.limbspan.photo.bracket.Brackets;
import org.limbspan.photo.file.PhotoFile;
import org.limbspan.photo.file.UnusableFile;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.NotFound;
import org.limbspan.platform.Unavailable;
import org.limbspan.rig.Rig;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.multipart.MultipartHttpServletRequest;

/**
 * The photographs of rigs. Photographs of one setup within ten minutes make one reading of the
 * ledger, whatever the order in which they come.
 */
@Service
public class Photos {

  private static final Logger LOG = LoggerFactory.getLogger(Photos.class);

  private final PhotoIntake intake;
  private final PhotoStore store;
  private final PhotoReadingStore book;
  private final PhotoWriter writer;
  private final BracketBook brackets;
  private final OriginalFiles originals;
  private final Darkroom darkroom;
  private final SheetIntake sheets;
  private final RefusalStore refusals;

  Photos(
      PhotoIntake intake,
      PhotoStore store,
      PhotoReadingStore book,
      PhotoWriter writer,
      BracketBook brackets,
      OriginalFiles originals,
      Darkroom darkroom,
      SheetIntake sheets,
      RefusalStore refusals) {
    this.intake = intake;
    this.store = store;
    this.book = book;
    this.writer = writer;
    this.brackets = brackets;
    this.originals = originals;
    this.darkroom = darkroom;
    this.sheets = sheets;
    this.refusals = refusals;
  }

  /** Receives the files of a request; whoever calls it closes them. */
  public ReceivedPhotos receive(MultipartHttpServletRequest request) {
    return ReceivedPhotos.of(request, originals);
  }

  /**
   * Measures files and, unless they are only tried, keeps them and enters their readings; never
   * called within a transaction.
   *
   * @return what became of each, in their order
   */
  public List<PhotoAnswer> take(
      Rig rig, List<IncomingPhoto> files, PhotoOptions options, PhotoProgress progress) {
    return intake.take(rig, files, options, progress);
  }

  /**
   * Measures photographs of a calibration target and, unless they are only tried, keeps them and
   * enters a calibration from each; never called within a transaction. Of what is not entered no
   * file is left.
   *
   * @param options their axis does not count
   * @return what became of each, in their order
   * @throws InvalidInput if the setup of one is in another unit than pixels; nothing is entered
   * @throws Conflict if another calibration is held for the instant of one; nothing is entered. The
   *     lines of its violations are places among the files, from 1; none if one file came alone
   * @throws Unavailable if a file cannot be read or kept; the message says whether anything was
   *     entered
   */
  public List<SheetAnswer> takeSheets(
      Rig rig, List<IncomingPhoto> files, SheetTarget target, PhotoOptions options) {
    return sheets.take(rig, files, target, options);
  }

  /** The photographs of a reading by time; none if it was not made of photographs. */
  @Transactional(readOnly = true)
  public List<KeptPhoto> ofReading(Rig rig, long readingId) {
    Optional<PhotoReading> reading = book.ofReading(rig.id(), readingId);
    if (reading.isEmpty()) {
      return List.of();
    }
    PhotoReading its = reading.get();
    List<Long> ids = Stream.concat(its.photoIds().stream(), its.setAsideIds().stream()).toList();
    return store.byIds(rig.id(), ids).stream()
        .map(
            photo ->
                kept(
                    photo,
                    readingId,
                    its.photoIds().contains(photo.id())
                        ? PhotoAnswer.Use.USED
                        : PhotoAnswer.Use.SET_ASIDE))
        .toList();
  }

  /** Photographs that stand, the last entered first, from before an id. */
  @Transactional(readOnly = true)
  public List<KeptPhoto> page(Rig rig, long before, int limit) {
    return store.page(rig.id(), before, limit).stream()
        .map(photo -> kept(photo, null, null))
        .toList();
  }

  /**
   * Files that gave no diameter and were refused since an instant, the latest first; those of
   * calibration targets are not among them.
   */
  @Transactional(readOnly = true)
  public List<RefusedFile> refusedSince(Rig rig, Instant since, int limit) {
    return refusals.since(rig.id(), since, limit);
  }

  /** Files that gave no diameter and were taken less than a bracket's length from a reading. */
  @Transactional(readOnly = true)
  public List<RefusedFile> refusedBeside(Rig rig, Instant takenAt) {
    return refusals.taken(
        rig.id(),
        takenAt.minus(Brackets.LENGTH),
        takenAt.plus(Brackets.LENGTH),
        RefusalStore.MOST_KEPT);
  }

  /**
   * One photograph.
   *
   * @throws NotFound if the rig has none of that id
   */
  @Transactional(readOnly = true)
  public KeptPhoto find(Rig rig, long photoId) {
    return store.byIds(rig.id(), List.of(photoId)).stream()
        .findFirst()
        .map(photo -> kept(photo, null, null))
        .orElseThrow(() -> new NotFound("photograph", "id", photoId));
  }

  /** Takes a photograph back, saying why; its reading is made of the others from then on. */
  public void withdraw(Rig rig, long photoId, String reason) {
    writer.withdraw(rig, photoId, reason);
    brackets.bringInLine(rig);
  }

  /**
   * Where the original of a photograph lies.
   *
   * @throws NotFound if it is not held
   */
  public Path original(Photograph photo) {
    if (!originals.isHeld(photo.sha256(), photo.format())) {
      throw new NotFound(
          "The file of photograph %d is not held: its ledger came without photographs. Sent again, it is kept."
              .formatted(photo.id()));
    }
    return originals.path(photo.sha256(), photo.format());
  }

  /** The upright picture as a JPEG file of 8 bits whose longer side has at most so many pixels. */
  public byte[] preview(Photograph photo, int longestSidePx) {
    Path file = original(photo);
    try {
      return darkroom.preview(file, PhotoFile.header(file), longestSidePx);
    } catch (IOException | UnusableFile e) {
      LOG.error("original {} of photograph {} cannot be shown", file, photo.id(), e);
      throw new Unavailable(
          "The original of this photograph cannot be read: it was kept as " + file.getFileName());
    }
  }

  private KeptPhoto kept(
      Photograph photo, @Nullable Long readingId, PhotoAnswer.@Nullable Use use) {
    return new KeptPhoto(
        photo,
        store.measurements(photo.id()),
        originals.isHeld(photo.sha256(), photo.format()),
        readingId,
        use);
  }
}

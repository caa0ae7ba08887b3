package org.limbspan.dashboard;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.limbspan.photo.Photos;
import org.limbspan.photo.RefusedFile;
import org.limbspan.rig.Rig;
import org.springframework.stereotype.Component;

/** Says which files gave no diameter, for whoever did not see them refused. */
@Component
class RefusedFiles {

  private static final Duration TOLD_FOR = Duration.ofDays(30);
  private static final int MOST_TOLD = 50;
  private static final int MOST_OPEN = 3;

  private final Photos photos;
  private final Clock clock;

  RefusedFiles(Photos photos, Clock clock) {
    this.photos = photos;
    this.clock = clock;
  }

  /**
   * Some of them.
   *
   * @param summary how many, and since when
   * @param open whether they are few enough to stand open on a page
   */
  record Sheet(String summary, List<PhotoLine> lines, boolean open) {}

  /** Those of the last thirty days, the latest first. */
  Sheet latest(Rig rig) {
    RigTime time = new RigTime(rig.timeZone());
    Instant since = clock.instant().minus(TOLD_FOR);
    List<RefusedFile> files = photos.refusedSince(rig, since, MOST_TOLD);
    return new Sheet(
        (files.size() < MOST_TOLD ? "" : "The latest ")
            + Typeset.count(files.size(), "file")
            + " without a diameter, refused since "
            + time.shortDay(files.isEmpty() ? since : files.get(files.size() - 1).refusedAt()),
        lines(files, file -> "Refused " + time.minute(file.refusedAt()) + taken(file, time)),
        files.size() <= MOST_OPEN);
  }

  /** Those that were taken within ten minutes of a reading, by time. */
  List<PhotoLine> beside(Rig rig, Instant takenAt) {
    RigTime time = new RigTime(rig.timeZone());
    return lines(photos.refusedBeside(rig, takenAt), file -> "Refused" + taken(file, time));
  }

  private static List<PhotoLine> lines(
      List<RefusedFile> files, Function<RefusedFile, String> headline) {
    return IntStream.range(0, files.size())
        .mapToObj(
            i -> {
              RefusedFile file = files.get(i);
              return PhotoWords.refused(i, file.file(), headline.apply(file), file.refusal());
            })
        .toList();
  }

  private static String taken(RefusedFile file, RigTime time) {
    Instant takenAt = file.takenAt();
    return takenAt == null ? "" : ", taken " + time.second(takenAt);
  }
}

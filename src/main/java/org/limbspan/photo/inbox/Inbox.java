package org.limbspan.photo.inbox;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.limbspan.photo.IncomingPhoto;
import org.limbspan.photo.PhotoAnswer;
import org.limbspan.photo.PhotoOptions;
import org.limbspan.photo.PhotoProgress;
import org.limbspan.photo.Photos;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Takes the photographs that lie in the folders of the rigs.
 *
 * <p>A folder is emptied once all of its files have stopped growing, so that a bracket is taken
 * whole; at the latest two minutes after its first file did. A file that was taken is moved into
 * {@code taken}, another one into {@code refused} with the reason in a text file beside it. A crash
 * in between does no harm: a file that is held already is taken once more and adds nothing.
 */
final class Inbox {

  private static final Logger LOG = LoggerFactory.getLogger(Inbox.class);
  private static final Duration STILL = Duration.ofSeconds(4);
  private static final Duration LONGEST_WAIT = Duration.ofMinutes(2);
  private static final int MOST_AT_ONCE = 60;
  private static final String AGAIN =
      "Or drop it on the page of the rig, with the time it was taken filled in there.";

  private final Path folder;
  private final Rigs rigs;
  private final Photos photos;
  private final Clock clock;
  private final Map<Path, Seen> seen = new HashMap<>();
  private final Set<String> unknown = new HashSet<>();

  Inbox(Path folder, Rigs rigs, Photos photos, Clock clock) {
    this.folder = folder;
    this.rigs = rigs;
    this.photos = photos;
    this.clock = clock;
  }

  /** A file as it was when it was looked at last. */
  private record Seen(long bytes, Instant modifiedAt, Instant sinceAt) {

    boolean isStillAs(long itsBytes, Instant itsModifiedAt) {
      return bytes == itsBytes && modifiedAt.equals(itsModifiedAt);
    }
  }

  /** Takes every folder's files that have stopped growing. */
  void takeWhatIsWhole() throws IOException {
    Files.createDirectories(folder);
    seen.keySet().removeIf(Files::notExists);
    for (Rig rig : rigs.all()) {
      Path its = folder.resolve(rig.slug());
      if (Files.isDirectory(its)) {
        take(rig, its);
      }
    }
    tellOfUnknownFolders();
  }

  private void take(Rig rig, Path its) throws IOException {
    List<Path> files = files(its);
    List<Path> whole = new ArrayList<>();
    boolean waited = false;
    for (Path file : files) {
      Duration still = stillFor(file);
      if (still.compareTo(STILL) >= 0) {
        whole.add(file);
      }
      waited |= still.compareTo(LONGEST_WAIT) >= 0;
    }
    if (!whole.isEmpty() && (whole.size() == files.size() || waited)) {
      takeAll(rig, its, whole.subList(0, Math.min(MOST_AT_ONCE, whole.size())));
    }
  }

  private void takeAll(Rig rig, Path its, List<Path> whole) throws IOException {
    List<IncomingPhoto> incoming =
        whole.stream().map(file -> new IncomingPhoto(file, name(file))).toList();
    List<PhotoAnswer> answers =
        photos.take(rig, incoming, PhotoOptions.USUAL, PhotoProgress.SILENT);
    int refused = 0;
    for (int i = 0; i < answers.size(); i++) {
      put(its, whole.get(i), answers.get(i));
      refused += answers.get(i).isMeasured() ? 0 : 1;
    }
    LOG.info(
        "inbox of rig {}: {} photographs taken, {} refused",
        rig.slug(),
        answers.size() - refused,
        refused);
  }

  private void put(Path its, Path file, PhotoAnswer answer) throws IOException {
    seen.remove(file);
    PhotoAnswer.Refusal refusal = answer.refused();
    Path shelf = Files.createDirectories(its.resolve(refusal == null ? "taken" : "refused"));
    Path target = freeName(shelf, name(file));
    if (refusal != null) {
      Files.write(shelf.resolve(name(target) + ".txt"), refusal.sentencesOnPages(AGAIN));
    }
    Files.move(file, target);
  }

  /** Nothing that lies there is ever overwritten. */
  private static Path freeName(Path shelf, String name) {
    Path target = shelf.resolve(name);
    int dot = name.lastIndexOf('.');
    String stem = dot > 0 ? name.substring(0, dot) : name;
    String ending = dot > 0 ? name.substring(dot) : "";
    for (int n = 2; Files.exists(target, LinkOption.NOFOLLOW_LINKS); n++) {
      target = shelf.resolve(stem + "-" + n + ending);
    }
    return target;
  }

  private Duration stillFor(Path file) throws IOException {
    Instant now = clock.instant();
    long bytes = Files.size(file);
    Instant modifiedAt = Files.getLastModifiedTime(file).toInstant();
    Seen before =
        Optional.ofNullable(seen.get(file))
            .filter(each -> each.isStillAs(bytes, modifiedAt))
            .orElseGet(() -> new Seen(bytes, modifiedAt, now));
    seen.put(file, before);
    return Duration.between(before.sinceAt(), now);
  }

  private static List<Path> files(Path its) throws IOException {
    try (Stream<Path> listed = Files.list(its)) {
      return listed
          .filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
          .filter(file -> !name(file).startsWith("."))
          .sorted()
          .toList();
    }
  }

  private void tellOfUnknownFolders() throws IOException {
    Set<String> slugs = new HashSet<>();
    rigs.all().forEach(rig -> slugs.add(rig.slug()));
    try (Stream<Path> listed = Files.list(folder)) {
      listed
          .map(Inbox::name)
          .filter(name -> !slugs.contains(name) && !name.startsWith(".") && unknown.add(name))
          .forEach(name -> LOG.warn("inbox: '{}' is not the slug of a rig; left alone", name));
    }
  }

  private static String name(Path path) {
    return String.valueOf(path.getFileName());
  }
}

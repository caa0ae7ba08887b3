package org.limbspan.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.limbspan.platform.PrivateFiles;

/**
 * The copies of one rig's ledger: a folder whose files are whole under their final names. The time
 * of change of the newest one is when it was last held against the ledger.
 */
final class CopyShelf {

  /**
   * The revision counts readings and what describes the rig, and not each frame of a photograph.
   */
  private static final Duration TRUST_IN_REVISION = Duration.ofDays(7);

  private static final String PART = ".part";

  private final Path folder;
  private final String slug;

  CopyShelf(Path copies, String slug) {
    this.folder = copies.resolve(slug);
    this.slug = slug;
  }

  /** A copy that is there. */
  record Copy(Path path, CopyName name) {}

  /** Newest first. */
  List<Copy> copies() throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .flatMap(
              file ->
                  CopyName.read(slug, String.valueOf(file.getFileName()))
                      .map(name -> new Copy(file, name))
                      .stream())
          .sorted(
              Comparator.comparing((Copy copy) -> copy.name().takenAt())
                  .thenComparing(copy -> copy.name().revision())
                  .reversed())
          .toList();
    }
  }

  Optional<Copy> newest() throws IOException {
    return copies().stream().findFirst();
  }

  /** Whether the ledger may hold something that the newest copy does not. */
  boolean isDue(long revision, Instant now) throws IOException {
    Optional<Copy> newest = newest();
    return newest.isEmpty()
        || newest.get().name().revision() != revision
        || Files.getLastModifiedTime(newest.get().path())
            .toInstant()
            .isBefore(now.minus(TRUST_IN_REVISION));
  }

  /** A new file for a copy that is not yet known to be whole; what a crash left of others goes. */
  Path part() throws IOException {
    PrivateFiles.createDirectories(folder);
    try (Stream<Path> files = Files.list(folder)) {
      for (Path left : files.filter(CopyShelf::isPart).toList()) {
        Files.delete(left);
      }
    }
    return PrivateFiles.create(folder.resolve("." + slug + PART));
  }

  private static boolean isPart(Path file) {
    return String.valueOf(file.getFileName()).endsWith(PART);
  }

  /** Gives a whole copy its name; one like the newest before takes its place and keeps its time. */
  CopyName keep(Path part, CopyName name) throws IOException {
    Optional<Copy> newest = newest();
    if (newest.isPresent() && Files.mismatch(part, newest.get().path()) < 0) {
      CopyName same = new CopyName(newest.get().name().takenAt(), name.revision());
      Files.setLastModifiedTime(newest.get().path(), FileTime.from(name.takenAt()));
      move(newest.get().path(), same);
      Files.delete(part);
      return same;
    }
    PrivateFiles.syncFile(part);
    Files.setLastModifiedTime(part, FileTime.from(name.takenAt()));
    move(part, name);
    return name;
  }

  private void move(Path from, CopyName name) throws IOException {
    Files.move(from, folder.resolve(name.of(slug)), StandardCopyOption.ATOMIC_MOVE);
    PrivateFiles.sync(folder);
  }

  /** Removes what {@link CopyRotation} does not keep, and nothing that is not a copy. */
  void rotate(ZoneId zone) throws IOException {
    List<Copy> copies = copies();
    Set<Instant> kept =
        CopyRotation.kept(
            copies.stream().map(copy -> copy.name().takenAt()).collect(Collectors.toSet()), zone);
    for (Copy copy : copies) {
      if (!kept.contains(copy.name().takenAt())) {
        Files.deleteIfExists(copy.path());
      }
    }
  }
}

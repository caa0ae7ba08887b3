package org.limbspan.photo;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.limbspan.photo.file.PhotoFormat;
import org.limbspan.platform.HomeDirectory;
import org.limbspan.platform.Sha256;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import org.springframework.util.FileSystemUtils;

/**
 * The originals under {@code limbspan.home}: each once, named by the SHA-256 of its bytes (FIPS
 * 180-4), readable by the service's user only. A name that is there has all of its bytes on the
 * disk.
 */
@Component
class OriginalFiles {

  private static final Logger LOG = LoggerFactory.getLogger(OriginalFiles.class);

  private static final boolean POSIX =
      FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

  private final Path folder;

  OriginalFiles(HomeDirectory home) {
    folder = home.path().resolve("photos");
  }

  /** A new file, for what is not yet known to be worth keeping. */
  Path temporary() throws IOException {
    Path incoming = incoming();
    Files.createDirectories(incoming, permissions("rwx------"));
    return Files.createFile(
        incoming.resolve(UUID.randomUUID() + ".part"), permissions("rw-------"));
  }

  /** A new folder, for many of them. */
  Path temporaryFolder() throws IOException {
    Path incoming = incoming();
    Files.createDirectories(incoming, permissions("rwx------"));
    return Files.createDirectory(
        incoming.resolve(UUID.randomUUID() + ".parts"), permissions("rwx------"));
  }

  /** Whether the original is here; a ledger may have come without its photographs. */
  boolean isHeld(String sha256, PhotoFormat format) {
    return Files.isRegularFile(path(sha256, format));
  }

  Path path(String sha256, PhotoFormat format) {
    return shelf(sha256).resolve(sha256 + "." + format.extension());
  }

  /** Keeps a copy of a file; it is on the disk when this returns. */
  void keep(Path source, String sha256, PhotoFormat format) throws IOException {
    try (Aside aside = aside()) {
      aside.lay(source, sha256, format);
      aside.keep(sha256, format);
    }
  }

  /** For files that are kept only if what speaks of them is entered; whoever asks closes it. */
  Aside aside() {
    return new Aside();
  }

  /**
   * Copies beside the originals. They become originals by being renamed; closing removes those that
   * did not, and never an original, which another entry may speak of.
   */
  final class Aside implements AutoCloseable {

    private final Map<Path, Path> partByTarget = new HashMap<>();

    private Aside() {}

    /** Lays a copy of a file there, unless that file is held or lies there already. */
    void lay(Path source, String sha256, PhotoFormat format) throws IOException {
      Path target = path(sha256, format);
      if (Files.exists(target) || partByTarget.containsKey(target)) {
        return;
      }
      Path part = temporary();
      partByTarget.put(target, part);
      Files.copy(source, part, StandardCopyOption.REPLACE_EXISTING);
      if (!sha256(part).equals(sha256)) {
        throw new IOException(source + " changed while it was read");
      }
    }

    /** Keeps a file that was laid there; it is on the disk when this returns. */
    void keep(String sha256, PhotoFormat format) throws IOException {
      Path part = partByTarget.get(path(sha256, format));
      if (part != null) {
        place(part, sha256, format);
        partByTarget.remove(path(sha256, format));
      }
    }

    /** What cannot be removed goes with the leftovers: it must not turn an entry into a failure. */
    @Override
    public void close() {
      for (Path part : partByTarget.values()) {
        try {
          Files.deleteIfExists(part);
        } catch (IOException e) {
          LOG.warn("the copy {} of what was not kept cannot be removed", part, e);
        }
      }
    }
  }

  /** Keeps a file from {@link #temporaryFolder} that has that hash, by renaming it. */
  void place(Path part, String sha256, PhotoFormat format) throws IOException {
    Files.createDirectories(shelf(sha256), permissions("rwx------"));
    sync(part, StandardOpenOption.WRITE);
    Files.move(part, path(sha256, format), StandardCopyOption.ATOMIC_MOVE);
    syncFolder(shelf(sha256));
  }

  /** Removes what a crash left of files that were never kept. */
  void removeLeftovers(Instant olderThan) throws IOException {
    if (!Files.isDirectory(incoming())) {
      return;
    }
    try (Stream<Path> listed = Files.list(incoming())) {
      List<Path> files = listed.toList();
      for (Path file : files) {
        if (Files.getLastModifiedTime(file).compareTo(FileTime.from(olderThan)) < 0) {
          FileSystemUtils.deleteRecursively(file);
        }
      }
    }
  }

  static String sha256(Path file) throws IOException {
    MessageDigest digest = Sha256.digest();
    try (InputStream bytes = new DigestInputStream(Files.newInputStream(file), digest)) {
      bytes.transferTo(OutputStream.nullOutputStream());
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private Path shelf(String sha256) {
    return folder.resolve(sha256.substring(0, 2));
  }

  private Path incoming() {
    return folder.resolve("incoming");
  }

  private static void sync(Path path, StandardOpenOption mode) throws IOException {
    try (FileChannel channel = FileChannel.open(path, mode)) {
      channel.force(true);
    }
  }

  /** Makes a renaming inside the folder outlast a power cut; not possible on Windows. */
  private static void syncFolder(Path path) throws IOException {
    if (POSIX) {
      sync(path, StandardOpenOption.READ);
    }
  }

  private static FileAttribute<?>[] permissions(String mode) {
    return POSIX
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(mode))
        }
        : new FileAttribute<?>[0];
  }
}

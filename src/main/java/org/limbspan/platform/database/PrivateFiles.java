package org.limbspan.platform.database;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/** Files that only the user of the service may read. */
final class PrivateFiles {

  private static final boolean POSIX =
      FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

  private PrivateFiles() {}

  static void createDirectories(Path directory) throws IOException {
    Files.createDirectories(directory, permissions("rwx------"));
  }

  /** Writes a new file; its permissions are set before it has any content. */
  static void write(Path file, String text) throws IOException {
    Files.deleteIfExists(file);
    Files.createFile(file, permissions("rw-------"));
    Files.writeString(file, text, StandardOpenOption.WRITE, StandardOpenOption.SYNC);
  }

  /** Makes a renaming inside the directory outlast a power cut; not possible on Windows. */
  static void sync(Path directory) throws IOException {
    if (POSIX) {
      try (FileChannel channel = FileChannel.open(directory, StandardOpenOption.READ)) {
        channel.force(true);
      }
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

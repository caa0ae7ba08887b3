package org.limbspan.platform;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/** Files that only the user of the service may read. */
public final class PrivateFiles {

  private static final boolean POSIX =
      FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

  private PrivateFiles() {}

  public static void createDirectories(Path directory) throws IOException {
    Files.createDirectories(directory, permissions("rwx------"));
  }

  /** Makes a new file; its permissions are set before it has any content. */
  public static Path create(Path file) throws IOException {
    Files.deleteIfExists(file);
    return Files.createFile(file, permissions("rw-------"));
  }

  /** Writes a new file; it is on the disk when this returns. */
  public static void write(Path file, String text) throws IOException {
    Files.writeString(create(file), text, StandardOpenOption.WRITE, StandardOpenOption.SYNC);
  }

  /** Makes what was written to a file outlast a power cut. */
  public static void syncFile(Path file) throws IOException {
    force(file, StandardOpenOption.WRITE);
  }

  /** Makes a renaming inside the directory outlast a power cut; not possible on Windows. */
  public static void sync(Path directory) throws IOException {
    if (POSIX) {
      force(directory, StandardOpenOption.READ);
    }
  }

  private static void force(Path path, StandardOpenOption mode) throws IOException {
    try (FileChannel channel = FileChannel.open(path, mode)) {
      channel.force(true);
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

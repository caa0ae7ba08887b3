package org.limbspan.platform.database;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.HomeDirectory;
import org.limbspan.platform.PrivateFiles;
import org.limbspan.platform.StartRefused;

/** The directory that holds everything lasting, open to one service at a time. */
final class Home implements AutoCloseable {

  private static final String LOCK = "limbspan.lock";

  /** Far behind the text, so that others can read the text where locks are mandatory. */
  private static final long LOCK_POSITION = Long.MAX_VALUE - 1;

  private final Path directory;
  private final FileChannel channel;

  private Home(Path directory, FileChannel channel) {
    this.directory = directory;
    this.channel = channel;
  }

  /**
   * Makes the directory if need be and locks it. The operating system lets go of the lock with the
   * process, however that ends.
   *
   * @throws StartRefused if it cannot be written, or another service holds it
   */
  static Home open(String name) {
    Path directory = HomeDirectory.resolved(name);
    try {
      PrivateFiles.createDirectories(directory);
      Path lock = directory.resolve(LOCK);
      FileChannel channel =
          FileChannel.open(lock, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (tryLock(channel) == null) {
        channel.close();
        throw inUse(directory, lock);
      }
      channel.truncate(0);
      String process = ProcessHandle.current().pid() + "\n";
      channel.write(ByteBuffer.wrap(process.getBytes(StandardCharsets.UTF_8)));
      return new Home(directory, channel);
    } catch (IOException e) {
      throw new StartRefused(
          "The home " + directory + " cannot be written: " + e,
          "Give this user the right to write there, or name another directory with"
              + " --limbspan.home=DIR.",
          e);
    }
  }

  Path resolve(String name) {
    return directory.resolve(name);
  }

  Path directory() {
    return directory;
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
    try {
      return channel.tryLock(LOCK_POSITION, 1, false);
    } catch (OverlappingFileLockException heldByThisProcess) {
      return null;
    }
  }

  private static StartRefused inUse(Path directory, Path lock) throws IOException {
    String process = Files.readString(lock).strip();
    return new StartRefused(
        "The home "
            + directory
            + " is in use by another Limbspan service"
            + (process.isEmpty() ? "." : ", process " + process + "."),
        "Stop that service first, or give this one a home of its own with --limbspan.home=DIR.");
  }
}

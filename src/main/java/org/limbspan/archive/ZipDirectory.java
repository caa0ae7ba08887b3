package org.limbspan.archive;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.zip.ZipException;
import org.limbspan.platform.TooLarge;

/**
 * The directory at the end of a zip file, which whoever opens it holds in memory. Places and
 * lengths by APPNOTE.TXT, sections 4.3.14 to 4.3.16.
 */
final class ZipDirectory {

  /** Some two hundred thousand files. */
  static final long MOST_BYTES = 24L << 20;

  private static final int END = 0x06054b50;
  private static final int END_BYTES = 22;
  private static final int LONGEST_COMMENT = 0xffff;
  private static final int DIRECTORY_LENGTH_AT = 12;

  private static final int LOCATOR = 0x07064b50;
  private static final int LOCATOR_BYTES = 20;
  private static final int LONG_END_AT = 8;
  private static final int LONG_END_BYTES = 56;
  private static final int LONG_DIRECTORY_LENGTH_AT = 40;
  private static final long IN_LONG_END = 0xffffffffL;

  private ZipDirectory() {}

  /**
   * Refuses a directory that is too long.
   *
   * @throws ZipException if there is none
   */
  static void requireModest(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
      long from = Math.max(0, channel.size() - END_BYTES - LONGEST_COMMENT - LOCATOR_BYTES);
      ByteBuffer tail = read(channel, from, (int) (channel.size() - from));
      for (int at = tail.limit() - END_BYTES; at >= 0; at--) {
        if (tail.getInt(at) == END) {
          requireModest(channel, tail, at);
          return;
        }
      }
    }
    throw new ZipException("no end of a directory");
  }

  private static void requireModest(FileChannel channel, ByteBuffer tail, int end)
      throws IOException {
    long bytes = tail.getInt(end + DIRECTORY_LENGTH_AT) & IN_LONG_END;
    int locator = end - LOCATOR_BYTES;
    if (locator >= 0 && tail.getInt(locator) == LOCATOR) {
      long at = tail.getLong(locator + LONG_END_AT);
      if (at < 0 || at > channel.size() - LONG_END_BYTES) {
        throw new ZipException("the end of the directory is not where it should be");
      }
      bytes = Math.max(bytes == IN_LONG_END ? 0 : bytes, lengthInLongEnd(channel, at));
    }
    if (bytes < 0 || bytes > MOST_BYTES) {
      throw new TooLarge("The zip file names more files than a ledger may have.");
    }
  }

  private static long lengthInLongEnd(FileChannel channel, long at) throws IOException {
    return read(channel, at, LONG_END_BYTES).getLong(LONG_DIRECTORY_LENGTH_AT);
  }

  private static ByteBuffer read(FileChannel channel, long from, int length) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
    while (bytes.hasRemaining()) {
      if (channel.read(bytes, from + bytes.position()) < 0) {
        throw new ZipException("cut off");
      }
    }
    return bytes.flip();
  }
}

package org.limbspan.archive;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes as long as enough is left on the disk for everybody else. */
final class RoomLeft extends FilterOutputStream {

  private static final long LOOK_BYTES = 4L << 20;

  private final Path place;
  private final long reserveBytes;
  private long unseenBytes;

  RoomLeft(OutputStream output, Path place, long reserveBytes) {
    super(output);
    this.place = place;
    this.reserveBytes = reserveBytes;
  }

  /**
   * Looks whether so much can be written.
   *
   * @throws IOException if less than the reserve would be left
   */
  static void require(Path place, long bytes, long reserveBytes) throws IOException {
    long free = Files.getFileStore(place).getUsableSpace();
    if (free - bytes < reserveBytes) {
      throw new IOException(
          "no copy is made: the disk of %s has %d bytes left, and %d and a reserve of %d are asked for (limbspan.copies.reserve)"
              .formatted(place, free, bytes, reserveBytes));
    }
  }

  @Override
  public void write(int b) throws IOException {
    look(1);
    out.write(b);
  }

  @Override
  public void write(byte[] bytes, int offset, int length) throws IOException {
    look(length);
    out.write(bytes, offset, length);
  }

  private void look(int bytes) throws IOException {
    unseenBytes += bytes;
    if (unseenBytes >= LOOK_BYTES) {
      require(place, unseenBytes, reserveBytes);
      unseenBytes = 0;
    }
  }
}

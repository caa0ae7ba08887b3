package org.limbspan.photo.file;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.CRC32;

/** A file's bytes in order, big-endian; never more of it in memory than a buffer. */
final class ByteFeed {

  private final InputStream source;
  private final byte[] buffer = new byte[1 << 16];
  private int at;
  private int end;

  ByteFeed(InputStream source) {
    this.source = source;
  }

  /** The next byte, 0 to 255. */
  int next() throws IOException {
    if (at == end) {
      fill();
    }
    return buffer[at++] & 0xff;
  }

  int nextShort() throws IOException {
    return next() << 8 | next();
  }

  int nextInt() throws IOException {
    return nextShort() << 16 | nextShort();
  }

  byte[] next(int count) throws IOException {
    byte[] bytes = new byte[count];
    for (int i = 0; i < count; i++) {
      bytes[i] = (byte) next();
    }
    return bytes;
  }

  void skip(long count) throws IOException {
    skip(count, new CRC32());
  }

  /** Passes over bytes and adds them to a checksum. */
  void skip(long count, CRC32 sum) throws IOException {
    long left = count;
    while (left > 0) {
      if (at == end) {
        fill();
      }
      int some = (int) Math.min(left, end - at);
      sum.update(buffer, at, some);
      at += some;
      left -= some;
    }
  }

  private void fill() throws IOException {
    at = 0;
    end = Math.max(0, source.read(buffer));
    if (end == 0) {
      throw new EOFException();
    }
  }
}

package org.limbspan.archive;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import org.limbspan.platform.Sha256;

/** Passes bytes on, counts them and takes their SHA-256 (FIPS 180-4). */
final class HashingOutput extends FilterOutputStream {

  private final MessageDigest digest = Sha256.digest();
  private long bytes;

  HashingOutput(OutputStream output) {
    super(output);
  }

  @Override
  public void write(int b) throws IOException {
    out.write(b);
    digest.update((byte) b);
    bytes++;
  }

  @Override
  public void write(byte[] b, int offset, int length) throws IOException {
    out.write(b, offset, length);
    digest.update(b, offset, length);
    bytes += length;
  }

  /** Leaves the stream beneath open. */
  @Override
  public void close() throws IOException {
    flush();
  }

  long bytes() {
    return bytes;
  }

  String sha256() {
    return HexFormat.of().formatHex(digest.digest());
  }
}

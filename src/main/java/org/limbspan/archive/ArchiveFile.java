package org.limbspan.archive;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.limbspan.platform.Sha256;
import org.limbspan.platform.TooLarge;

/** A ledger's file laid aside. Only entries that are asked for by name are ever looked at. */
final class ArchiveFile implements AutoCloseable {

  private static final int LONGEST_DESCRIPTION = 1 << 20;
  private static final int BUFFER = 1 << 16;

  /** Text of digits is packed to a tenth or so; more than this is made to fill a disk. */
  private static final long MOST_UNPACKED = 100;

  private final ZipFile zip;
  private final long mostBytes;

  private ArchiveFile(ZipFile zip, long mostBytes) {
    this.zip = zip;
    this.mostBytes = mostBytes;
  }

  static ArchiveFile open(Path path, long mostBytes) throws IOException {
    return new ArchiveFile(new ZipFile(path.toFile()), mostBytes);
  }

  byte[] description() throws IOException {
    try (InputStream json = part(DataPackage.FILE_NAME)) {
      byte[] bytes = json.readNBytes(LONGEST_DESCRIPTION);
      if (json.read() >= 0) {
        throw new TooLarge(DataPackage.FILE_NAME + " is longer than 1 MiB.");
      }
      return bytes;
    }
  }

  boolean has(String name) {
    return zip.getEntry(name) != null;
  }

  InputStream part(String name) throws IOException {
    ZipEntry entry = zip.getEntry(name);
    if (entry == null) {
      throw Unfit.file(name, "missing", "this file in the zip");
    }
    return zip.getInputStream(entry);
  }

  /**
   * Reads every file once and compares it with its hash.
   *
   * @param hashes by name, with the algorithm before a colon
   */
  void verify(Map<String, String> hashes) throws IOException {
    byte[] buffer = new byte[BUFFER];
    for (Map.Entry<String, String> expected : hashes.entrySet()) {
      MessageDigest digest = Sha256.digest();
      try (InputStream part = new DigestInputStream(part(expected.getKey()), digest)) {
        ZipEntry entry = zip.getEntry(expected.getKey());
        long most = Math.min(20 * mostBytes, 1_000_000 + MOST_UNPACKED * entry.getCompressedSize());
        long bytes = 0;
        for (int read = part.read(buffer); read >= 0; read = part.read(buffer)) {
          bytes += read;
          if (bytes > most) {
            throw new TooLarge(
                expected.getKey() + " unpacks to more than " + MOST_UNPACKED + " times its size.");
          }
        }
      }
      String found = "sha256:" + HexFormat.of().formatHex(digest.digest());
      if (!found.equals(expected.getValue())) {
        throw Unfit.file(expected.getKey(), found, expected.getValue() + ", as described");
      }
    }
  }

  @Override
  public void close() throws IOException {
    zip.close();
  }
}

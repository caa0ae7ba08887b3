package org.limbspan.archive;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.limbspan.platform.LedgerFile;
import org.limbspan.platform.LedgerFiles;
import org.limbspan.platform.Sha256;
import org.limbspan.platform.TooLarge;

/** A ledger's file laid aside. Only entries that are asked for by name are ever looked at. */
final class ArchiveFile implements AutoCloseable {

  private static final int LONGEST_DESCRIPTION = 1 << 20;

  /** Text of digits is packed to a tenth or so; more than this is made to fill a disk. */
  private static final long MOST_UNPACKED = 100;

  private final ZipFile zip;
  private final long mostBytes;

  private ArchiveFile(ZipFile zip, long mostBytes) {
    this.zip = zip;
    this.mostBytes = mostBytes;
  }

  /**
   * Opens a file.
   *
   * @throws ZipException if it is no zip file
   * @throws TooLarge if its directory alone would fill the memory
   */
  static ArchiveFile open(Path path, long mostBytes) throws IOException {
    ZipDirectory.requireModest(path);
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

  InputStream part(String name) throws IOException {
    ZipEntry entry = zip.getEntry(name);
    if (entry == null) {
      throw Unfit.file(name, "missing", "this file in the zip");
    }
    return zip.getInputStream(entry);
  }

  /**
   * Reads every table once and compares it with its hash.
   *
   * @param hashes by name, with the algorithm before a colon
   */
  void verify(Map<String, String> hashes) throws IOException {
    for (Map.Entry<String, String> expected : hashes.entrySet()) {
      String name = expected.getKey();
      try (Measured part = measured(name, Math.min(20 * mostBytes, mostUnpacked(name)))) {
        part.transferTo(OutputStream.nullOutputStream());
        String found = "sha256:" + part.sha256();
        if (!found.equals(expected.getValue())) {
          throw Unfit.file(name, found, expected.getValue() + ", as described");
        }
      }
    }
  }

  /**
   * Lays every file of {@code original.csv} aside.
   *
   * @return how many there are
   */
  long layAside(LedgerFiles files, LedgerFiles.Incoming incoming) throws IOException {
    Layer layer = new Layer(files, incoming);
    try (InputStream lines = part(OriginalList.FILE_NAME)) {
      OriginalList.read(lines, layer);
    }
    return layer.count;
  }

  /** Takes the files of a list, of which none may come twice and all together not be too many. */
  private final class Layer implements OriginalList.Lines {

    private final LedgerFiles files;
    private final LedgerFiles.Incoming incoming;
    private long count;
    private long bytes;
    private String last = "";

    Layer(LedgerFiles files, LedgerFiles.Incoming incoming) {
      this.files = files;
      this.incoming = incoming;
    }

    @Override
    public void take(long line, LedgerFile file) throws IOException {
      String path = OriginalList.path(file);
      if (!files.isName(file) || file.name().compareTo(last) <= 0) {
        throw Unfit.line(
            OriginalList.FILE_NAME, line, path, "the hash of a photograph's file, in their order");
      }
      last = file.name();
      bytes += file.bytes();
      if (file.bytes() > Math.min(files.mostBytes(), mostUnpacked(path)) || bytes > mostBytes) {
        throw new TooLarge(path + " is longer than a photograph may be, or all of them are.");
      }
      try (Measured part = measured(path, file.bytes())) {
        incoming.lay(file, part);
        if (part.bytes() != file.bytes() || !part.sha256().equals(file.sha256())) {
          throw Unfit.file(
              path,
              part.bytes() + " bytes of sha256:" + part.sha256(),
              file.bytes() + " bytes of sha256:" + file.sha256());
        }
      }
      count++;
    }
  }

  private long mostUnpacked(String name) {
    ZipEntry entry = zip.getEntry(name);
    return entry == null ? 0 : 1_000_000 + MOST_UNPACKED * entry.getCompressedSize();
  }

  private Measured measured(String name, long most) throws IOException {
    return new Measured(part(name), name, most);
  }

  /** Counts and hashes what is read, and ends what is too long. */
  private static final class Measured extends FilterInputStream {

    private final MessageDigest digest = Sha256.digest();
    private final String name;
    private final long most;
    private long bytes;

    Measured(InputStream in, String name, long most) {
      super(in);
      this.name = name;
      this.most = most;
    }

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
      int read = in.read(buffer, offset, length);
      if (read > 0) {
        digest.update(buffer, offset, read);
        bytes += read;
        if (bytes > most) {
          throw new TooLarge(
              name
                  + " unpacks to more than it may: "
                  + MOST_UNPACKED
                  + " times its size, or what the ledger says of it.");
        }
      }
      return read;
    }

    long bytes() {
      return bytes;
    }

    String sha256() {
      return HexFormat.of().formatHex(digest.digest());
    }
  }

  @Override
  public void close() throws IOException {
    zip.close();
  }
}

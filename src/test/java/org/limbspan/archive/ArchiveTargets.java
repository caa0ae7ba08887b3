package org.limbspan.archive;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipException;
import org.limbspan.platform.LedgerFile;
import org.limbspan.platform.LedgerFiles;
import org.limbspan.platform.Problem;
import org.limbspan.testing.fuzz.ParserTarget;

/** Ledgers as they are opened and compared before anything of them reaches the database. */
public final class ArchiveTargets {

  private static final byte[] TABLE = "slug,name\ngarden,Invented\n".getBytes(UTF_8);
  private static final byte[] PICTURE = "not much of a picture".getBytes(UTF_8);

  private ArchiveTargets() {}

  /** Files are laid into {@code folder} one after the other. */
  public static List<ParserTarget> all(Path folder) {
    Path file = folder.resolve("ledger.zip");
    DataPackage description = new DataPackage();
    return List.of(
        new ParserTarget(
            "ledgers",
            4,
            List.of(ledger(true), ledger(false)),
            List.of("PK\u0001\u0002", "PK\u0005\u0006", "originals/", "../", "rig.csv", "sha256:"),
            input -> open(file, description, input),
            List.of(Problem.class, ZipException.class, EOFException.class)),
        ParserTarget.ofText(
            "descriptions of ledgers",
            8,
            text -> description.promised(text.getBytes(UTF_8)),
            List.of(json("original.csv")),
            "limbspanLayout",
            "resources",
            "hash"),
        ParserTarget.ofText(
            "lists of originals",
            8,
            text ->
                OriginalList.read(
                    new ByteArrayInputStream(text.getBytes(UTF_8)),
                    (line, each) -> AnyName.NAMES.isName(each)),
            List.of(list()),
            "originals/",
            ".jpg"));
  }

  /** As far as the reader goes without a database; Java's zip refuses names that are no text. */
  private static void open(Path file, DataPackage description, byte[] input) throws IOException {
    Files.write(file, input);
    try (ArchiveFile archive = ArchiveFile.open(file, 1 << 20)) {
      DataPackage.Promised promised = description.promised(archive.description());
      archive.verify(promised.hashes());
      if (promised.hashes().containsKey(OriginalList.FILE_NAME)) {
        archive.layAside(AnyName.NAMES, AnyName.NAMES.incoming());
      }
    }
  }

  private static byte[] ledger(boolean originals) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("rig.csv", TABLE);
    if (originals) {
      files.put("originals/" + LedgerZip.sha256(PICTURE) + ".jpg", PICTURE);
      files.put("original.csv", list().getBytes(UTF_8));
    }
    files.put("datapackage.json", json(originals ? "original.csv" : "rig.csv").getBytes(UTF_8));
    try {
      return LedgerZip.zip(files);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static String list() {
    String sha256 = LedgerZip.sha256(PICTURE);
    return "path,byte_count,sha256\noriginals/%1$s.jpg,%2$d,%1$s\n"
        .formatted(sha256, PICTURE.length);
  }

  private static String json(String last) {
    byte[] lastBytes = last.equals("rig.csv") ? TABLE : list().getBytes(UTF_8);
    return """
    {"profile": "tabular-data-package", "limbspanLayout": 2, "resources": [
      {"path": "rig.csv", "hash": "sha256:%s"}, {"path": "%s", "hash": "sha256:%s"}]}
    """
        .formatted(LedgerZip.sha256(TABLE), last, LedgerZip.sha256(lastBytes));
  }

  /** Takes files and forgets them. */
  private enum AnyName implements LedgerFiles, LedgerFiles.Incoming {
    NAMES;

    @Override
    public long mostBytes() {
      return 1 << 16;
    }

    @Override
    public boolean isName(LedgerFile file) {
      return file.name().matches("[0-9a-f]{64}\\.jpg");
    }

    @Override
    public void each(long rigId, Visitor visitor) {}

    @Override
    public InputStream open(LedgerFile file) {
      return InputStream.nullInputStream();
    }

    @Override
    public Incoming incoming() {
      return this;
    }

    @Override
    public void lay(LedgerFile file, InputStream bytes) throws IOException {
      bytes.transferTo(OutputStream.nullOutputStream());
    }

    @Override
    public void keep(long rigId) {}

    @Override
    public void close() {}
  }
}

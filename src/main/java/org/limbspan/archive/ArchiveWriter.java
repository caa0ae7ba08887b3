package org.limbspan.archive;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.jspecify.annotations.Nullable;
import org.limbspan.archive.DataPackage.Originals;
import org.limbspan.archive.DataPackage.WrittenPart;
import org.limbspan.platform.LedgerFiles;
import org.limbspan.platform.LedgerPart;
import org.limbspan.rig.Rig;
import org.postgresql.PGConnection;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Writes a ledger as it stands at one moment, row by row: memory does not grow with it. The same
 * ledger gives the same bytes.
 */
@Component
class ArchiveWriter {

  /** Zip wants a time; one that is always the same keeps the bytes the same. */
  private static final LocalDateTime NO_TIME = LocalDateTime.of(2000, 1, 1, 0, 0);

  private final ArchiveParts parts;
  private final DataPackage description;
  private final LedgerFiles files;
  private final JdbcTemplate jdbc;
  private final TransactionTemplate snapshot;

  ArchiveWriter(
      ArchiveParts parts,
      DataPackage description,
      LedgerFiles files,
      JdbcTemplate jdbc,
      PlatformTransactionManager transactions) {
    this.parts = parts;
    this.description = description;
    this.files = files;
    this.jdbc = jdbc;
    this.snapshot = new TransactionTemplate(transactions);
    snapshot.setReadOnly(true);
    snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
  }

  /**
   * Writes the ledger.
   *
   * @param originals whether the photographs' files go with it
   */
  void write(Rig rig, boolean originals, OutputStream output) throws IOException {
    ZipOutputStream zip = new ZipOutputStream(output, StandardCharsets.UTF_8);
    Path list = originals ? Files.createTempFile("limbspan-originals-", ".csv") : null;
    try {
      List<WrittenPart> written = writeParts(rig, list, zip);
      Originals sent = list == null ? null : writeOriginals(list, zip);
      zip.putNextEntry(entry("README.txt"));
      zip.write(description.words(rig, written, sent).getBytes(StandardCharsets.UTF_8));
      zip.closeEntry();
      zip.putNextEntry(entry(DataPackage.FILE_NAME));
      zip.write(description.json(rig, written, sent));
      zip.closeEntry();
      zip.finish();
    } finally {
      if (list != null) {
        Files.deleteIfExists(list);
      }
    }
  }

  /** All tables, and the list of the files, as they stand at one moment. */
  private List<WrittenPart> writeParts(Rig rig, @Nullable Path list, ZipOutputStream zip)
      throws IOException {
    List<WrittenPart> written = new ArrayList<>();
    try {
      snapshot.executeWithoutResult(
          status -> {
            jdbc.execute(
                (Connection connection) -> {
                  return writeParts(rig, zip, connection, written);
                });
            if (list != null) {
              writeList(rig, list);
            }
          });
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    return written;
  }

  /** Answers how many there are. */
  private int writeParts(
      Rig rig, ZipOutputStream zip, Connection connection, List<WrittenPart> written)
      throws SQLException {
    PGConnection postgres = connection.unwrap(PGConnection.class);
    try {
      for (LedgerPart part : parts.all()) {
        zip.putNextEntry(entry(ArchiveParts.fileName(part)));
        HashingOutput hashing = new HashingOutput(zip);
        postgres.getCopyAPI().copyOut(ArchiveParts.copyOut(part, rig.id()), hashing);
        zip.closeEntry();
        written.add(new WrittenPart(part, hashing.bytes(), hashing.sha256()));
      }
      return written.size();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void writeList(Rig rig, Path list) {
    try (Writer lines = Files.newBufferedWriter(list)) {
      lines.write(OriginalList.header());
      files.each(rig.id(), file -> lines.write(OriginalList.line(file)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Photographs do not get smaller: they are stored as they are. */
  private Originals writeOriginals(Path list, ZipOutputStream zip) throws IOException {
    AtomicLong count = new AtomicLong();
    zip.setLevel(Deflater.NO_COMPRESSION);
    try (InputStream lines = Files.newInputStream(list)) {
      OriginalList.read(
          lines,
          (line, file) -> {
            zip.putNextEntry(entry(OriginalList.path(file)));
            try (InputStream bytes = files.open(file)) {
              bytes.transferTo(zip);
            }
            zip.closeEntry();
            count.incrementAndGet();
          });
    }
    zip.setLevel(Deflater.DEFAULT_COMPRESSION);
    zip.putNextEntry(entry(OriginalList.FILE_NAME));
    HashingOutput hashing = new HashingOutput(zip);
    Files.copy(list, hashing);
    zip.closeEntry();
    return new Originals(count.get(), hashing.bytes(), hashing.sha256());
  }

  private static ZipEntry entry(String name) {
    ZipEntry entry = new ZipEntry(name);
    entry.setTimeLocal(NO_TIME);
    return entry;
  }
}

package org.limbspan.archive;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
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
  private final JdbcTemplate jdbc;
  private final TransactionTemplate snapshot;

  ArchiveWriter(
      ArchiveParts parts,
      DataPackage description,
      JdbcTemplate jdbc,
      PlatformTransactionManager transactions) {
    this.parts = parts;
    this.description = description;
    this.jdbc = jdbc;
    this.snapshot = new TransactionTemplate(transactions);
    snapshot.setReadOnly(true);
    snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
  }

  void write(Rig rig, OutputStream output) throws IOException {
    ZipOutputStream zip = new ZipOutputStream(output, StandardCharsets.UTF_8);
    try {
      snapshot.executeWithoutResult(
          status ->
              jdbc.execute(
                  (Connection connection) -> {
                    return write(rig, zip, connection);
                  }));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    zip.finish();
  }

  /** Answers how many parts there are. */
  private int write(Rig rig, ZipOutputStream zip, Connection connection) throws SQLException {
    PGConnection postgres = connection.unwrap(PGConnection.class);
    try {
      List<WrittenPart> written = new ArrayList<>();
      for (LedgerPart part : parts.all()) {
        zip.putNextEntry(entry(ArchiveParts.fileName(part)));
        HashingOutput hashing = new HashingOutput(zip);
        postgres.getCopyAPI().copyOut(ArchiveParts.copyOut(part, rig.id()), hashing);
        zip.closeEntry();
        written.add(new WrittenPart(part, hashing.bytes(), hashing.sha256()));
      }
      zip.putNextEntry(entry("README.txt"));
      zip.write(description.words(rig, written).getBytes(StandardCharsets.UTF_8));
      zip.closeEntry();
      zip.putNextEntry(entry(DataPackage.FILE_NAME));
      zip.write(description.json(rig, written));
      zip.closeEntry();
      return written.size();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static ZipEntry entry(String name) {
    ZipEntry entry = new ZipEntry(name);
    entry.setTimeLocal(NO_TIME);
    return entry;
  }

  /** A part as it went out. */
  record WrittenPart(LedgerPart part, long bytes, String sha256) {}
}

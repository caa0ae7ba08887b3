package org.limbspan.archive;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipException;
import org.limbspan.platform.LedgerPart;
import org.limbspan.platform.TooLarge;
import org.limbspan.rig.Rig;
import org.limbspan.rig.RigDescribed;
import org.limbspan.rig.Rigs;
import org.postgresql.PGConnection;
import org.postgresql.util.PSQLException;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Takes a ledger of {@link ArchiveWriter}'s into this installation, all of it or nothing. The file
 * is laid aside first: its parts are wanted in their own order. Memory does not grow with it.
 */
@Component
class ArchiveReader {

  private static final int BUFFER = 1 << 16;

  private final ArchiveParts parts;
  private final DataPackage description;
  private final Rigs rigs;
  private final JdbcTemplate jdbc;
  private final JdbcClient client;
  private final ApplicationEventPublisher events;
  private final TransactionTemplate writing;
  private final long mostBytes;

  ArchiveReader(
      ArchiveParts parts,
      DataPackage description,
      Rigs rigs,
      JdbcTemplate jdbc,
      JdbcClient client,
      ApplicationEventPublisher events,
      PlatformTransactionManager transactions,
      @Value("${limbspan.ledger.most-bytes:2147483648}") long mostBytes) {
    this.parts = parts;
    this.description = description;
    this.rigs = rigs;
    this.jdbc = jdbc;
    this.client = client;
    this.events = events;
    this.writing = new TransactionTemplate(transactions);
    this.mostBytes = mostBytes;
  }

  /**
   * Takes the ledger.
   *
   * @throws org.limbspan.platform.Conflict if there is a rig of its name
   * @throws org.limbspan.platform.InvalidInput if it is no ledger, damaged, or holds what none can
   */
  Taken take(InputStream body) throws IOException {
    Path aside = Files.createTempFile("limbspan-ledger-", ".zip");
    try {
      copy(body, aside);
      try (ArchiveFile file = ArchiveFile.open(aside, mostBytes)) {
        file.verify(description.hashes(file.description()));
        return writing.execute(status -> take(file));
      } catch (ZipException e) {
        throw Unfit.file("body", "no zip file, or a damaged one", "a ledger.zip, whole");
      } catch (UncheckedIOException e) {
        throw e.getCause();
      }
    } finally {
      Files.deleteIfExists(aside);
    }
  }

  private void copy(InputStream body, Path aside) throws IOException {
    try (var output = Files.newOutputStream(aside)) {
      byte[] buffer = new byte[BUFFER];
      long bytes = 0;
      for (int read = body.read(buffer); read >= 0; read = body.read(buffer)) {
        bytes += read;
        if (bytes > mostBytes) {
          throw new TooLarge(
              "The ledger is larger than %d bytes; see limbspan.ledger.most-bytes."
                  .formatted(mostBytes));
        }
        output.write(buffer, 0, read);
      }
    }
  }

  private Taken take(ArchiveFile file) {
    Map<String, Long> rows = new LinkedHashMap<>();
    for (LedgerPart part : parts.all()) {
      rows.put(part.name(), stage(part, file));
    }
    // Before anything is entered: making a partition waits for all who are entering.
    parts.all().forEach(part -> part.prepare(ArchiveParts.staged(part), client));
    LedgerPart first = parts.all().get(0);
    enter(first, 0);
    Rig rig = rigs.find(slug(first));
    parts.all().stream().skip(1).forEach(part -> enter(part, rig.id()));
    rigs.recordChange(rig.id());
    events.publishEvent(new RigDescribed(rig.id(), rig.slug()));
    return new Taken(rig.slug(), rows);
  }

  private String slug(LedgerPart rig) {
    return client.sql("select slug from " + ArchiveParts.staged(rig)).query(String.class).single();
  }

  private long stage(LedgerPart part, ArchiveFile file) {
    jdbc.execute(ArchiveParts.createStaged(part));
    if (part.mayBeMissing() && !file.has(ArchiveParts.fileName(part))) {
      return 0;
    }
    Long rows =
        jdbc.execute(
            (Connection connection) -> {
              try (InputStream csv = file.part(ArchiveParts.fileName(part))) {
                return connection
                    .unwrap(PGConnection.class)
                    .getCopyAPI()
                    .copyIn(ArchiveParts.copyIn(part), csv);
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              } catch (PSQLException e) {
                throw refusal(part, e);
              }
            });
    return rows == null ? 0 : rows;
  }

  private void enter(LedgerPart part, long rigId) {
    jdbc.execute(
        (Connection connection) -> {
          try (var statement = connection.createStatement()) {
            return statement.executeUpdate(part.insert(ArchiveParts.staged(part), rigId));
          } catch (PSQLException e) {
            throw refusal(part, e);
          }
        });
  }

  /** Data exceptions, broken constraints and wrong files are the sender's; all else is ours. */
  private static RuntimeException refusal(LedgerPart part, PSQLException e) throws SQLException {
    String state = String.valueOf(e.getSQLState());
    if (state.startsWith("22") || state.startsWith("23")) {
      return Unfit.row(ArchiveParts.fileName(part), e);
    }
    throw e;
  }
}

package org.limbspan.archive;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.zip.ZipException;
import org.limbspan.archive.DataPackage.Promised;
import org.limbspan.platform.HomeDirectory;
import org.limbspan.platform.LedgerFile;
import org.limbspan.platform.LedgerFiles;
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
  private final LedgerFiles files;
  private final HomeDirectory home;
  private final Rigs rigs;
  private final Clock clock;
  private final JdbcTemplate jdbc;
  private final JdbcClient client;
  private final ApplicationEventPublisher events;
  private final TransactionTemplate writing;
  private final long mostBytes;

  ArchiveReader(
      ArchiveParts parts,
      DataPackage description,
      LedgerFiles files,
      HomeDirectory home,
      Clock clock,
      Rigs rigs,
      JdbcTemplate jdbc,
      JdbcClient client,
      ApplicationEventPublisher events,
      PlatformTransactionManager transactions,
      @Value("${limbspan.ledger.most-bytes:17179869184}") long mostBytes) {
    this.parts = parts;
    this.description = description;
    this.files = files;
    this.home = home;
    this.clock = clock;
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
    Path aside = temporary();
    try {
      copy(body, aside);
      try (ArchiveFile file = ArchiveFile.open(aside, mostBytes)) {
        Promised promised = description.promised(file.description());
        requireAll(promised);
        file.verify(promised.hashes());
        return take(file, promised);
      } catch (ZipException | EOFException e) {
        throw Unfit.file("body", "no zip file, or a damaged one", "a ledger.zip, whole");
      } catch (UncheckedIOException e) {
        throw e.getCause();
      }
    } finally {
      Files.deleteIfExists(aside);
    }
  }

  /**
   * Reads a ledger's file whole, as {@link #take} would, and enters nothing.
   *
   * @throws org.limbspan.platform.Problem if it could not be taken
   */
  void check(Path path) throws IOException {
    try (ArchiveFile file = ArchiveFile.open(path, mostBytes)) {
      Promised promised = description.promised(file.description());
      requireAll(promised);
      file.verify(promised.hashes());
      if (promised.hashes().containsKey(OriginalList.FILE_NAME)) {
        file.layAside(files, new Nowhere());
      }
    }
  }

  /** Photographs' files that are only looked at. */
  private static final class Nowhere implements LedgerFiles.Incoming {

    @Override
    public void lay(LedgerFile file, InputStream bytes) throws IOException {
      bytes.transferTo(OutputStream.nullOutputStream());
    }

    @Override
    public void keep(long rigId) {}

    @Override
    public void close() {}
  }

  /** Photographs are laid aside before anything is locked, and put in place as the last step. */
  private Taken take(ArchiveFile file, Promised promised) throws IOException {
    if (!promised.hashes().containsKey(OriginalList.FILE_NAME)) {
      return enter(file, promised, rigId -> {}, 0);
    }
    try (LedgerFiles.Incoming incoming = files.incoming()) {
      long count = file.layAside(files, incoming);
      return enter(file, promised, incoming::keep, count);
    }
  }

  private Taken enter(ArchiveFile file, Promised promised, LastStep last, long originals) {
    return Objects.requireNonNull(
        writing.execute(
            status -> {
              Rig rig = enter(file, promised);
              try {
                last.take(rig.id());
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
              return new Taken(rig.slug(), rows(promised), originals);
            }));
  }

  /** What is done before the ledger is committed. */
  private interface LastStep {
    void take(long rigId) throws IOException;
  }

  private void requireAll(Promised promised) {
    for (LedgerPart part : parts.all()) {
      String name = ArchiveParts.fileName(part);
      if (part.sinceLayout() <= promised.layout() && !promised.hashes().containsKey(name)) {
        throw Unfit.file(DataPackage.FILE_NAME, "no " + name, "a description of every table");
      }
    }
  }

  /** In the home, where there is room for photographs; what a crash left there goes first. */
  private Path temporary() throws IOException {
    Path folder = Files.createDirectories(home.path().resolve("incoming"));
    FileTime yesterday = FileTime.from(clock.instant().minus(1, ChronoUnit.DAYS));
    try (DirectoryStream<Path> left = Files.newDirectoryStream(folder, "ledger-*.zip")) {
      for (Path file : left) {
        if (Files.getLastModifiedTime(file).compareTo(yesterday) < 0) {
          Files.deleteIfExists(file);
        }
      }
    }
    return Files.createTempFile(folder, "ledger-", ".zip");
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

  private Rig enter(ArchiveFile file, Promised promised) {
    for (LedgerPart part : parts.all()) {
      jdbc.execute(ArchiveParts.createStaged(part));
      if (part.sinceLayout() <= promised.layout()) {
        stage(part, file);
      }
    }
    // Before anything is entered: making a partition waits for all who are entering.
    parts.all().forEach(part -> part.prepare(ArchiveParts.staged(part), client));
    LedgerPart first = parts.all().get(0);
    enter(first, 0);
    Rig rig = rigs.find(slug(first));
    parts.all().stream().skip(1).forEach(part -> enter(part, rig.id()));
    rigs.recordChange(rig.id());
    events.publishEvent(new RigDescribed(rig.id(), rig.slug()));
    return rig;
  }

  private Map<String, Long> rows(Promised promised) {
    Map<String, Long> rows = new LinkedHashMap<>();
    for (LedgerPart part : parts.all()) {
      if (part.sinceLayout() <= promised.layout()) {
        rows.put(
            part.name(),
            client
                .sql("select count(*) from " + ArchiveParts.staged(part))
                .query(Long.class)
                .single());
      }
    }
    return rows;
  }

  private String slug(LedgerPart rig) {
    return client.sql("select slug from " + ArchiveParts.staged(rig)).query(String.class).single();
  }

  private void stage(LedgerPart part, ArchiveFile file) {
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

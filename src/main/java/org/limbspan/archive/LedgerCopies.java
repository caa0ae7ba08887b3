package org.limbspan.archive;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BooleanSupplier;
import org.limbspan.platform.HomeDirectory;
import org.limbspan.platform.PrivateFiles;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.slf4j.MDC;

/** Copies of every rig's ledger for the day on which the database is lost. */
class LedgerCopies {

  private static final Logger LOG = LoggerFactory.getLogger(LedgerCopies.class);

  private final Rigs rigs;
  private final ArchiveWriter writer;
  private final ArchiveReader reader;
  private final CopyProperties properties;
  private final Path folder;
  private final Clock clock;
  private final ZoneId zone;
  private final Map<String, String> troubles = new ConcurrentHashMap<>();

  LedgerCopies(
      Rigs rigs,
      ArchiveWriter writer,
      ArchiveReader reader,
      CopyProperties properties,
      HomeDirectory home,
      Clock clock,
      ZoneId zone) {
    this.rigs = rigs;
    this.writer = writer;
    this.reader = reader;
    this.properties = properties;
    this.folder = properties.folder(home);
    this.clock = clock;
    this.zone = zone;
  }

  /**
   * Copies every ledger that has changed; one that cannot be copied does not keep the others from
   * it.
   *
   * @throws IOException at the end, if some could not
   */
  void make(BooleanSupplier stopping) throws IOException {
    troubles.clear();
    for (Rig rig : rigs.all()) {
      if (stopping.getAsBoolean()) {
        return;
      }
      MDC.put("rig", rig.slug());
      try {
        make(rig);
      } catch (IOException | RuntimeException failed) {
        LOG.warn("the ledger of {} was not copied", rig.slug(), failed);
        troubles.put(rig.slug(), String.valueOf(failed.getMessage()));
      } finally {
        MDC.remove("rig");
      }
    }
    if (!troubles.isEmpty()) {
      throw new IOException("ledgers not copied: " + String.join(", ", troubles.keySet()));
    }
  }

  private void make(Rig rig) throws IOException {
    CopyShelf shelf = new CopyShelf(folder, rig.slug());
    long revision = rigs.revision(rig.id());
    Instant now = clock.instant();
    if (!shelf.isDue(revision, now)) {
      return;
    }
    Optional<CopyShelf.Copy> before = shelf.newest();
    PrivateFiles.createDirectories(folder);
    long expectedBytes = before.isPresent() ? Files.size(before.get().path()) : 0;
    RoomLeft.require(folder, expectedBytes, properties.reserve().toBytes());
    Path part = shelf.part();
    try {
      try (OutputStream output =
          new RoomLeft(Files.newOutputStream(part), folder, properties.reserve().toBytes())) {
        writer.write(rig, properties.photographs(), output);
      }
      reader.check(part);
      CopyName kept = shelf.keep(part, new CopyName(now, revision));
      LOG.info("the ledger of {} is copied: {}", rig.slug(), kept.of(rig.slug()));
    } finally {
      Files.deleteIfExists(part);
    }
    shelf.rotate(zone);
  }

  Path folder() {
    return folder;
  }

  /** Why a ledger was not copied when it was last tried here, by slug. */
  Map<String, String> troubles() {
    return new TreeMap<>(troubles);
  }

  /** When the newest copy that lies here was taken, by slug; empty if there is none. */
  Map<String, Optional<Instant>> newest() throws IOException {
    Map<String, Optional<Instant>> newest = new TreeMap<>();
    for (Rig rig : rigs.all()) {
      newest.put(
          rig.slug(),
          new CopyShelf(folder, rig.slug()).newest().map(copy -> copy.name().takenAt()));
    }
    return newest;
  }
}

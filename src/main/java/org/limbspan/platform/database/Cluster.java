package org.limbspan.platform.database;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;
import org.limbspan.platform.PrivateFiles;
import org.limbspan.platform.StartRefused;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.util.FileSystemUtils;

/** One data directory and the server over it: made, started, stopped. */
final class Cluster {

  static final String SUPERUSER = "postgres";

  private static final Logger LOG = LoggerFactory.getLogger(Cluster.class);
  private static final String PASSWORD = "limbspan.password";
  private static final String SETTINGS = "limbspan.conf";
  private static final int PASSWORD_BYTES = 24;

  /** Replaying the log of a killed server can take its time on a slow disk. */
  private static final String LONGEST_START_S = "300";

  private static final String LONGEST_STOP_S = "60";

  private final Home home;
  private final PostgresPrograms programs;
  private final Path data;

  private Cluster(Home home, PostgresPrograms programs) {
    this.home = home;
    this.programs = programs;
    this.data = home.resolve("database");
  }

  /** Finds the data directory in the home, or makes it. */
  static Cluster in(Home home) {
    Cluster cluster = new Cluster(home, PostgresPrograms.in(home));
    try {
      cluster.removeUnfinished();
      if (Files.notExists(cluster.data)) {
        cluster.initialise();
      }
      cluster.refuseOtherVersion();
      return cluster;
    } catch (IOException e) {
      throw new UncheckedIOException("the data directory could not be made", e);
    }
  }

  String password() throws IOException {
    return Files.readString(data.resolve(PASSWORD)).strip();
  }

  /** Starts the server, after stopping one that an earlier run left behind. */
  void start(int port) throws IOException {
    stopLeftover();
    Files.writeString(data.resolve(SETTINGS), ServerSettings.text(port));
    programs.run(
        "pg_ctl",
        "start",
        "-w",
        "-t",
        LONGEST_START_S,
        "-D",
        data.toString(),
        "-l",
        ServerLog.ready(log()).toString());
  }

  /** Ends open sessions, writes everything to disk, stops. */
  void stop() {
    programs.run("pg_ctl", "stop", "-m", "fast", "-w", "-t", LONGEST_STOP_S, "-D", data.toString());
  }

  boolean isServing() {
    return serving().isPresent();
  }

  /** The server, if one serves; found by a look at all that tells it from a stranger. */
  Optional<ServingProcess> serving() {
    try {
      return Postmaster.of(data).flatMap(Postmaster::serving);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The last words of the server, for a person. */
  String lastWords() throws IOException {
    return ServerLog.tail(log());
  }

  private Path log() {
    return home.resolve("database.log");
  }

  private void stopLeftover() throws IOException {
    Optional<Postmaster> left = Postmaster.of(data);
    if (left.isEmpty()) {
      return;
    }
    if (left.get().isServing()) {
      LOG.warn("stopping PostgreSQL process {}, left by an earlier run", left.get().pid());
      stop();
    } else if (left.get().process().isPresent()) {
      left.get().disown();
    }
  }

  /** Works under a name of its own until everything is in place. */
  private void initialise() throws IOException {
    LOG.info("making the database in {}", data);
    Path unfinished = home.resolve("unfinished-" + ProcessHandle.current().pid());
    Path password = home.resolve(unfinished.getFileName() + ".password");
    PrivateFiles.write(password, newPassword());
    // Collation by code point, built in: an index stays valid whatever the system's C library does.
    programs.run(
        "initdb",
        "--pgdata=" + unfinished,
        "--username=" + SUPERUSER,
        "--auth=scram-sha-256",
        "--pwfile=" + password,
        "--encoding=UTF8",
        "--locale=C",
        "--locale-provider=builtin",
        "--builtin-locale=C.UTF-8");
    Files.writeString(
        unfinished.resolve("postgresql.conf"),
        "\ninclude = '" + SETTINGS + "'\n",
        StandardOpenOption.APPEND,
        StandardOpenOption.SYNC);
    Files.move(password, unfinished.resolve(PASSWORD), StandardCopyOption.ATOMIC_MOVE);
    PrivateFiles.sync(unfinished);
    Files.move(unfinished, data, StandardCopyOption.ATOMIC_MOVE);
    PrivateFiles.sync(home.directory());
  }

  /** As far as possible: the initdb of a service killed a moment ago may still be at work there. */
  private void removeUnfinished() throws IOException {
    try (DirectoryStream<Path> leftovers =
        Files.newDirectoryStream(home.directory(), "unfinished-*")) {
      for (Path leftover : leftovers) {
        FileSystemUtils.deleteRecursively(leftover.toFile());
      }
    }
  }

  private void refuseOtherVersion() throws IOException {
    Path file = data.resolve("PG_VERSION");
    String found = Files.exists(file) ? Files.readString(file).strip() : "no version";
    String ours = programs.majorVersion();
    if (!found.equals(ours)) {
      throw new StartRefused(
          data + " holds data of PostgreSQL " + found + "; this service brings " + ours + ".",
          "Start the Limbspan that made it, or give this one another home with"
              + " --limbspan.home=DIR. Nothing was changed.");
    }
  }

  private static String newPassword() {
    byte[] random = new byte[PASSWORD_BYTES];
    new SecureRandom().nextBytes(random);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(random);
  }
}

package org.limbspan.platform.reads;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.limbspan.testing.TestDatabase;
import org.springframework.util.FileSystemUtils;

/**
 * A PostgreSQL server and its standby, on the loopback interface.
 *
 * <p>The standby is made by the low-level backup API (PostgreSQL 18 documentation, section "Making
 * a Base Backup Using the Low Level API"), since the programs that come along hold no {@code
 * pg_basebackup}.
 */
final class TwoServers implements AutoCloseable {

  private static final Set<String> LEFT_OUT =
      Set.of("postmaster.pid", "postmaster.opts", "epg-lock", "pg_replslot", "pg_stat_tmp");

  private final Path directory;
  private final int standbyPort = freePort();
  private final EmbeddedPostgres primary;
  private @Nullable EmbeddedPostgres standby;

  TwoServers() throws IOException {
    directory = Files.createTempDirectory("limbspan-two-servers");
    primary = server(directory.resolve("primary"), 0);
  }

  private static EmbeddedPostgres server(Path data, int port) throws IOException {
    EmbeddedPostgres.Builder builder =
        EmbeddedPostgres.builder()
            .setDataDirectory(data)
            .setCleanDataDirectory(false)
            .setServerConfig("timezone", "UTC")
            // as a server is by itself; the library's settings for tests answer before they write
            .setServerConfig("synchronous_commit", "on")
            .setServerConfig("full_page_writes", "on");
    if (port != 0) {
      builder.setPort(port);
    }
    return builder.start();
  }

  /** Copies the primary, and starts a standby from the copy. */
  void makeStandby() throws IOException, SQLException {
    Path from = directory.resolve("primary");
    Path to = directory.resolve("standby");
    try (Connection connection = connect(primaryDatabase());
        Statement statement = connection.createStatement()) {
      statement.execute("select pg_backup_start('standby', fast => true)");
      copy(from, to);
      try (ResultSet label =
          statement.executeQuery(
              "select labelfile from pg_backup_stop(wait_for_archive => false)")) {
        label.next();
        Files.writeString(to.resolve("backup_label"), label.getString(1));
      }
    }
    Files.createFile(to.resolve("standby.signal"));
    Files.createDirectories(to.resolve("pg_replslot"));
    Files.createDirectories(to.resolve("pg_stat_tmp"));
    Files.writeString(
        to.resolve("postgresql.auto.conf"),
        """
        hot_standby = on
        primary_conninfo = 'host=127.0.0.1 port=%d user=postgres'
        """
            .formatted(primary.getPort()),
        StandardOpenOption.CREATE,
        StandardOpenOption.APPEND);
    startStandby();
  }

  void startStandby() throws IOException {
    standby = server(directory.resolve("standby"), standbyPort);
  }

  /** As a computer that loses its power: none of its processes says a word. */
  void killStandby() throws IOException, InterruptedException {
    signalStandby("KILL");
    if (standby != null) {
      standby.close();
    }
  }

  /** Sends a signal to all processes of the standby. */
  void signalStandby(String name) throws IOException, InterruptedException {
    Path file = directory.resolve("standby").resolve("postmaster.pid");
    ProcessHandle main =
        ProcessHandle.of(Long.parseLong(Files.readAllLines(file).get(0).strip())).orElseThrow();
    List<String> command = new ArrayList<>(List.of("kill", "-" + name, Long.toString(main.pid())));
    main.children().forEach(child -> command.add(Long.toString(child.pid())));
    new ProcessBuilder(command).inheritIO().start().waitFor();
  }

  TestDatabase primaryDatabase() {
    return new TestDatabase(url(primary.getPort()), "postgres", "postgres");
  }

  /** Whether it runs or not. */
  TestDatabase standbyDatabase() {
    return new TestDatabase(url(standbyPort), "postgres", "postgres");
  }

  private static String url(int port) {
    return "jdbc:postgresql://127.0.0.1:" + port + "/postgres";
  }

  static Connection connect(TestDatabase database) throws SQLException {
    return DriverManager.getConnection(database.url(), database.username(), database.password());
  }

  /** What one query answers, as text. */
  static String ask(TestDatabase database, String sql) throws SQLException {
    try (Connection connection = connect(database);
        Statement statement = connection.createStatement();
        ResultSet answer = statement.executeQuery(sql)) {
      answer.next();
      return String.valueOf(answer.getString(1));
    }
  }

  static void run(TestDatabase database, String sql) throws SQLException {
    try (Connection connection = connect(database);
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  /** Files may go while they are copied; the log from the backup's start on puts that right. */
  private static void copy(Path from, Path to) throws IOException {
    Files.walkFileTree(
        from,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes its)
              throws IOException {
            if (LEFT_OUT.contains(String.valueOf(folder.getFileName()))) {
              return FileVisitResult.SKIP_SUBTREE;
            }
            Files.copy(
                folder, to.resolve(from.relativize(folder)), StandardCopyOption.COPY_ATTRIBUTES);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes its) throws IOException {
            if (!LEFT_OUT.contains(String.valueOf(file.getFileName()))) {
              try {
                Files.copy(
                    file, to.resolve(from.relativize(file)), StandardCopyOption.COPY_ATTRIBUTES);
              } catch (NoSuchFileException gone) {
                return FileVisitResult.CONTINUE;
              }
            }
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFileFailed(Path file, IOException failed) throws IOException {
            if (failed instanceof NoSuchFileException) {
              return FileVisitResult.CONTINUE;
            }
            throw failed;
          }
        });
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  @Override
  public void close() throws IOException {
    if (standby != null) {
      standby.close();
    }
    primary.close();
    FileSystemUtils.deleteRecursively(directory.toFile());
  }
}

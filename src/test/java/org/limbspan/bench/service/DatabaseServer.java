package org.limbspan.bench.service;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/** A database server beside the service, on one port and with one directory all the time. */
final class DatabaseServer implements AutoCloseable {

  private static final List<String> DURABLE =
      List.of("fsync", "synchronous_commit", "full_page_writes");

  private final Path directory;
  private @Nullable EmbeddedPostgres running;
  private int port;

  DatabaseServer(Path directory) {
    this.directory = directory;
  }

  void start() throws IOException {
    var builder =
        EmbeddedPostgres.builder()
            .setDataDirectory(directory)
            .setCleanDataDirectory(false)
            .setServerConfig("timezone", "UTC");
    // as a server is by itself; the library's settings for tests forget the last commits in a crash
    DURABLE.forEach(setting -> builder.setServerConfig(setting, "on"));
    if (port != 0) {
      builder.setPort(port);
    }
    running = builder.start();
    port = running.getPort();
  }

  void stop() throws IOException {
    if (running != null) {
      running.close();
    }
  }

  /** Its main process. */
  ProcessHandle postmaster() throws IOException {
    long pid =
        Long.parseLong(Files.readAllLines(directory.resolve("postmaster.pid")).get(0).strip());
    return ProcessHandle.of(pid).orElseThrow();
  }

  /** Kills one of its processes without a word, which makes it recover from its log. */
  void killOne(Random random) throws IOException {
    List<ProcessHandle> children = postmaster().children().toList();
    if (!children.isEmpty()) {
      children.get(random.nextInt(children.size())).destroyForcibly();
    }
  }

  /** Sends a signal to all of its processes. */
  void signal(String name) throws IOException, InterruptedException {
    ProcessHandle main = postmaster();
    List<String> command = new ArrayList<>(List.of("kill", "-" + name, Long.toString(main.pid())));
    main.children().forEach(child -> command.add(Long.toString(child.pid())));
    Shell.run(command.toArray(String[]::new));
  }

  /** Of the database that the service uses. */
  String url() {
    return "jdbc:postgresql://127.0.0.1:" + port + "/postgres";
  }

  Connection connect() throws SQLException {
    return DriverManager.getConnection(url(), "postgres", "postgres");
  }

  /** A service on this server. */
  ServiceProcess serviceOf(Path jar, Path home, List<String> options, String... properties)
      throws IOException {
    List<String> all = new ArrayList<>(List.of(properties));
    all.add("--spring.datasource.url=" + url());
    all.add("--spring.datasource.username=postgres");
    return ServiceProcess.of(
        jar, home, options, all, Map.of("SPRING_DATASOURCE_PASSWORD", "postgres"));
  }

  @Override
  public void close() {
    try {
      stop();
    } catch (IOException e) {
      System.err.println(e);
    }
  }
}

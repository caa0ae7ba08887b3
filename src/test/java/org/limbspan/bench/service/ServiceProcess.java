package org.limbspan.bench.service;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** The service as a user starts it, in a process of its own that can be killed and started anew. */
final class ServiceProcess implements AutoCloseable {

  private static final Duration LONGEST_START = Duration.ofMinutes(3);
  private static final long PAUSE_MILLIS = 50;

  private final List<String> command;
  private final Map<String, String> environment;
  private final Path log;
  private final Path home;
  private final Http http;
  private @Nullable Process process;

  private ServiceProcess(
      List<String> command, Map<String, String> environment, Path home, int port) {
    this.command = command;
    this.environment = environment;
    this.home = home;
    this.log = home.resolveSibling(home.getFileName() + ".log");
    this.http = new Http(URI.create("http://127.0.0.1:" + port));
  }

  /**
   * A service that is not started yet.
   *
   * @param options for the virtual machine, such as the heap's size
   * @param properties of the service, such as the database's address
   */
  static ServiceProcess of(
      Path jar,
      Path home,
      List<String> options,
      List<String> properties,
      Map<String, String> environment)
      throws IOException {
    int port = freePort();
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(
        List.of(
            "-XX:+UseSerialGC",
            "-XX:TieredStopAtLevel=1",
            "-XX:-UsePerfData",
            "-XX:+UnlockDiagnosticVMOptions",
            "-XX:AsyncDeflationInterval=5000",
            "-XX:GuaranteedSafepointInterval=10000"));
    Path shared = jar.resolveSibling("limbspan.jsa"); // of an unpacked jar; see ops/README.md
    if (Files.exists(shared)) {
      command.add("-XX:SharedArchiveFile=" + shared);
    }
    command.addAll(options);
    command.addAll(List.of("-jar", jar.toString(), "--limbspan.home=" + home));
    command.add("--server.port=" + port);
    command.addAll(properties);
    return new ServiceProcess(command, environment, home, port);
  }

  /** How to talk to it; also while it is down. */
  Http http() {
    return http;
  }

  Path home() {
    return home;
  }

  Path log() {
    return log;
  }

  boolean isAlive() {
    return process != null && process.isAlive();
  }

  long pid() {
    return running().pid();
  }

  /** Starts it and waits until its health answers 200. */
  void start() throws IOException, InterruptedException {
    launch();
    awaitHealth();
  }

  /** Starts it and does not wait. */
  void launch() throws IOException {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().putAll(environment);
    builder.redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()));
    process = builder.start();
  }

  /** Waits until its health answers 200. */
  void awaitHealth() throws IOException, InterruptedException {
    long deadline = System.nanoTime() + LONGEST_START.toNanos();
    while (System.nanoTime() < deadline) {
      if (http.status("/actuator/health") == 200) {
        return;
      }
      if (!running().isAlive()) {
        throw new IOException("the service ended by itself; its words are in " + log);
      }
      Thread.sleep(PAUSE_MILLIS);
    }
    throw new IOException("no health after " + LONGEST_START + "; its words are in " + log);
  }

  /** As SIGKILL does. */
  void kill() throws InterruptedException {
    running().destroyForcibly().waitFor();
  }

  /** As SIGTERM does; waits for its end. */
  void stop() throws InterruptedException {
    running().destroy();
    if (!running().waitFor(90, TimeUnit.SECONDS)) {
      kill();
    }
  }

  /** The main process of the embedded database, if it runs. */
  Optional<ProcessHandle> postmaster() throws IOException {
    Path file = home.resolve("database").resolve("postmaster.pid");
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    List<String> lines = Files.readAllLines(file);
    return lines.isEmpty()
        ? Optional.empty()
        : ProcessHandle.of(Long.parseLong(lines.get(0).strip()));
  }

  @Override
  public void close() {
    if (isAlive()) {
      try {
        stop();
      } catch (InterruptedException e) {
        running().destroyForcibly();
        Thread.currentThread().interrupt();
      }
    }
  }

  private Process running() {
    if (process == null) {
      throw new IllegalStateException("not started");
    }
    return process;
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0)) {
      return socket.getLocalPort();
    }
  }
}

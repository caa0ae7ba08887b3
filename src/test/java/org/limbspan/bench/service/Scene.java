package org.limbspan.bench.service;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** A service, and what will go wrong with it. */
record Scene(ServiceProcess service, Outage outage, Runnable afterwards) implements AutoCloseable {

  private static final List<String> OPTIONS = List.of("-Xmx256m");
  private static final String FAKE_TIME = "/usr/lib/x86_64-linux-gnu/faketime/libfaketime.so.1";

  static Scene of(String kind, Path jar, Path folder) throws IOException, InterruptedException {
    return switch (kind) {
      case "disk" -> disk(jar, folder);
      case "stopped" -> stopped(jar, folder);
      case "frozen" -> frozen(jar, folder);
      case "clock" -> clock(jar, folder);
      default ->
          throw new IllegalArgumentException("expected disk, stopped, frozen or clock: " + kind);
    };
  }

  @Override
  public void close() {
    service.close();
    afterwards.run();
  }

  /** The home's file system has no byte left. */
  private static Scene disk(Path jar, Path folder) throws IOException, InterruptedException {
    Shell.run("mount", "-t", "tmpfs", "-o", "size=400m", "limbspan-bench", folder.toString());
    Path filler = folder.resolve("filler");
    ServiceProcess service =
        ServiceProcess.of(jar, folder.resolve("home"), OPTIONS, List.of(), Map.of());
    return new Scene(
        service,
        new Outage() {
          @Override
          public void begin() throws IOException {
            fill(filler);
          }

          @Override
          public void end() throws IOException {
            Files.delete(filler);
          }
        },
        () -> Shell.runQuietly("umount", "-l", folder.toString()));
  }

  private static void fill(Path filler) throws IOException {
    byte[] block = new byte[4096];
    try (var out = Files.newOutputStream(filler)) {
      while (true) {
        out.write(block);
      }
    } catch (IOException full) {
      if (Files.size(filler) == 0) {
        throw full;
      }
    }
  }

  /** The database is shut down, and started again. */
  private static Scene stopped(Path jar, Path folder) throws IOException {
    DatabaseServer server = new DatabaseServer(folder.resolve("server"));
    server.start();
    return new Scene(
        server.serviceOf(jar, folder.resolve("home"), OPTIONS),
        new Outage() {
          @Override
          public void begin() throws IOException {
            server.stop();
          }

          @Override
          public void end() throws IOException {
            server.start();
          }
        },
        server::close);
  }

  /** The database holds its connections and says nothing. */
  private static Scene frozen(Path jar, Path folder) throws IOException {
    DatabaseServer server = new DatabaseServer(folder.resolve("server"));
    server.start();
    return new Scene(
        server.serviceOf(jar, folder.resolve("home"), OPTIONS),
        new Outage() {
          @Override
          public void begin() throws InterruptedException, IOException {
            server.signal("STOP");
          }

          @Override
          public void end() throws InterruptedException, IOException {
            server.signal("CONT");
          }
        },
        server::close);
  }

  private static Scene clock(Path jar, Path folder) throws IOException {
    Path time = Files.writeString(folder.resolve("time"), "+0\n");
    Map<String, String> environment =
        Map.of(
            "LD_PRELOAD",
            FAKE_TIME,
            "FAKETIME_TIMESTAMP_FILE",
            time.toString(),
            "FAKETIME_NO_CACHE",
            "1",
            "FAKETIME_DONT_FAKE_MONOTONIC",
            "1",
            // otherwise everything that waits for a while does not
            "FAKETIME_FORCE_MONOTONIC_FIX",
            "0");
    return new Scene(
        ServiceProcess.of(jar, folder.resolve("home"), OPTIONS, List.of(), environment),
        new Outage() {
          @Override
          public void begin() throws IOException {
            Files.writeString(time, "+1h\n");
          }

          @Override
          public void end() throws IOException {
            Files.writeString(time, "+0\n");
          }
        },
        () -> {});
  }
}

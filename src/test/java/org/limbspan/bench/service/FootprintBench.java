package org.limbspan.bench.service;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.springframework.util.FileSystemUtils;

/**
 * One rig with ten years of readings on a small computer: time from start to health 200, beside a
 * web service of the same framework that does nothing; memory; processor time when idle. Arguments:
 * jar, best unpacked by {@code ops/unpack} (target/limbspan.jar); heap (128m); starts (5); seconds
 * of idleness (60).
 */
public final class FootprintBench {

  private static final List<String> PAGES =
      List.of("", "/cycle", "/nights", "/tonight", "/log", "/rig", "/conclusions", "/letter");

  private final Path jar;
  private final Path home;
  private final String heap;

  private FootprintBench(Path jar, Path home, String heap) {
    this.jar = jar;
    this.home = home;
    this.heap = heap;
  }

  public static void main(String[] args) throws Exception {
    Path jar = Path.of(args.length > 0 ? args[0] : "target/limbspan.jar");
    String heap = args.length > 1 ? args[1] : "128m";
    int starts = args.length > 2 ? Integer.parseInt(args[2]) : 5;
    int idleSeconds = args.length > 3 ? Integer.parseInt(args[3]) : 60;
    Path folder = Files.createTempDirectory("limbspan-footprint");
    try {
      new FootprintBench(jar, folder.resolve("home"), heap).run(starts, idleSeconds);
    } finally {
      FileSystemUtils.deleteRecursively(folder);
    }
  }

  private void run(int starts, int idleSeconds) throws Exception {
    try (ServiceProcess service = service()) {
      long began = System.nanoTime();
      service.start();
      System.out.printf("first start, with a new database: %.1f s%n", since(began));
      require(service.http().post("/api/rigs", "application/json", TenYears.RIG), 201);
      String csv = TenYears.csv(15_000);
      String path = "/api/rigs/" + TenYears.SLUG + "/readings";
      require(service.http().post(path, "text/csv", csv), 200);
      use(service);
      System.out.println("after intake and pages: " + Memory.of(service));
      tellIdle(service, idleSeconds);
    }
    double[] times = new double[starts];
    double[] empty = new double[starts];
    for (int i = 0; i < starts; i++) {
      try (ServiceProcess service = service()) {
        long began = System.nanoTime();
        service.start();
        times[i] = since(began);
        if (i == starts - 1) {
          use(service);
          System.out.println("after a start and pages: " + Memory.of(service));
          tellIdle(service, idleSeconds);
        }
      }
      empty[i] = emptyService();
    }
    System.out.printf(
        "start to health 200, median of %d: %.1f s (%.1f to %.1f); a service that does nothing, from the class path: %.1f s%n",
        starts,
        median(times),
        Arrays.stream(times).min().orElseThrow(),
        Arrays.stream(times).max().orElseThrow(),
        median(empty));
  }

  private ServiceProcess service() throws IOException {
    return ServiceProcess.of(jar, home, List.of("-Xmx" + heap), List.of(), Map.of());
  }

  /** Looks at every page of the rig, twice, when it has been judged. */
  private static void use(ServiceProcess service) throws IOException, InterruptedException {
    new Stand(service.http()).judgements(List.of(TenYears.SLUG));
    for (int round = 0; round < 2; round++) {
      for (String page : PAGES) {
        require(service.http().get("/rigs/" + TenYears.SLUG + page), 200);
      }
    }
  }

  private static void tellIdle(ServiceProcess service, int seconds)
      throws IOException, InterruptedException {
    Thread.sleep(5000);
    double before = Memory.processorSeconds(service);
    Thread.sleep(seconds * 1000L);
    double used = Memory.processorSeconds(service) - before;
    System.out.printf(
        "idle for %d s: %.2f %% of one core, service and database; %s%n",
        seconds, 100 * used / seconds, Memory.of(service));
  }

  private static double emptyService() throws IOException, InterruptedException {
    int port;
    try (ServerSocket socket = new ServerSocket(0)) {
      port = socket.getLocalPort();
    }
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                EmptyService.class.getName(),
                "--server.port=" + port));
    long began = System.nanoTime();
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      Http http = new Http(URI.create("http://127.0.0.1:" + port));
      while (http.status("/") == Http.NO_ANSWER) {
        if (!process.isAlive()) {
          throw new IOException("the service that does nothing did not start");
        }
        Thread.sleep(20);
      }
      return since(began);
    } finally {
      process.destroyForcibly().waitFor();
    }
  }

  private static double since(long began) {
    return (System.nanoTime() - began) / 1e9;
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  private static void require(Http.Reply reply, int status) throws IOException {
    if (reply.status() != status) {
      throw new IOException("answered " + reply.status() + " " + reply.body());
    }
  }
}

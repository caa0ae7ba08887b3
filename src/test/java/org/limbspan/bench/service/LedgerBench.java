package org.limbspan.bench.service;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.springframework.util.FileSystemUtils;

/**
 * A ledger of 15,000 readings out of one installation and into a fresh one, and out of that again:
 * times, memory, whether both files are equal byte by byte and both judgements character by
 * character. Arguments: jar (target/limbspan.jar), heap (128m). Ends with status 1 if anything
 * differs.
 */
public final class LedgerBench {

  private static final String PATH = "/api/rigs/" + TenYears.SLUG;

  private LedgerBench() {}

  public static void main(String[] args) throws Exception {
    Path jar = Path.of(args.length > 0 ? args[0] : "target/limbspan.jar");
    String heap = args.length > 1 ? args[1] : "128m";
    Path folder = Files.createTempDirectory("limbspan-ledger");
    boolean good;
    try {
      good = run(jar, heap, folder);
    } finally {
      FileSystemUtils.deleteRecursively(folder);
    }
    System.exit(good ? 0 : 1);
  }

  private static boolean run(Path jar, String heap, Path folder) throws Exception {
    Path first = folder.resolve("first.zip");
    Path second = folder.resolve("second.zip");
    Map<String, String> before;
    try (ServiceProcess service = service(jar, heap, folder.resolve("one"))) {
      service.start();
      require(service.http().post("/api/rigs", "application/json", TenYears.RIG), 201);
      String csv = nudged(TenYears.csv(15_000));
      require(service.http().post(PATH + "/readings", "text/csv", csv), 200);
      before = new Stand(service.http()).judgements(List.of(TenYears.SLUG));
      fetch(service, first);
    }
    Map<String, String> after;
    try (ServiceProcess service = service(jar, heap, folder.resolve("other"))) {
      service.start();
      long began = System.nanoTime();
      require(service.http().postFile("/api/ledger", "application/zip", first), 201);
      System.out.printf("taken in within %.1f s; %s%n", since(began), Memory.of(service));
      after = new Stand(service.http()).judgements(List.of(TenYears.SLUG));
      fetch(service, second);
    }
    List<String> different = Undisturbed.differences(before, after);
    boolean equal = Files.mismatch(first, second) == -1;
    System.out.printf(
        "%d bytes; second file equal byte by byte: %s; of %d judged parts %d differ %s; alerts: %s%n",
        Files.size(first),
        equal,
        before.size(),
        different.size(),
        different,
        before.getOrDefault(TenYears.SLUG + "/alerts", "").length() > 20 ? "yes" : "none");
    return equal && different.isEmpty();
  }

  private static ServiceProcess service(Path jar, String heap, Path home) throws IOException {
    return ServiceProcess.of(jar, home, List.of("-Xmx" + heap), List.of(), Map.of());
  }

  private static void fetch(ServiceProcess service, Path file)
      throws IOException, InterruptedException {
    long began = System.nanoTime();
    try (InputStream body = service.http().stream(PATH + "/ledger.zip")) {
      Files.copy(body, file);
    }
    System.out.printf("out within %.1f s; %s%n", since(began), Memory.of(service));
  }

  /** Larger by 0.4 percent in the last year, so that there is something to be alarmed at. */
  private static String nudged(String csv) {
    List<String> lines = new ArrayList<>();
    List<String> all = csv.lines().toList();
    for (int i = 0; i < all.size(); i++) {
      String[] cells = all.get(i).split(",", -1);
      if (i > all.size() - 1500) {
        cells[2] = Double.toString(1.004 * Double.parseDouble(cells[2]));
      }
      lines.add(String.join(",", cells));
    }
    return String.join("\n", lines) + "\n";
  }

  private static double since(long began) {
    return (System.nanoTime() - began) / 1e9;
  }

  private static void require(Http.Reply reply, int status) throws IOException {
    if (reply.status() != status) {
      throw new IOException("answered " + reply.status() + " " + reply.body());
    }
  }
}

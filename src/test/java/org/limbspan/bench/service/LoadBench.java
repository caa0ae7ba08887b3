package org.limbspan.bench.service;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.springframework.util.FileSystemUtils;

/**
 * Eight clients at once, for ten minutes: pages, readings one by one and in files, judgements,
 * ledgers. Arguments: minutes (10), jar (target/limbspan.jar), heap ({@code 256m}). Ends with
 * status 1 if any answer was not 2xx or a reading is missing.
 */
public final class LoadBench {

  private static final int CLIENTS = 8;
  private static final Instant FIRST = Instant.parse("2015-01-01T00:00:00Z");

  private final Map<String, List<Long>> nanos = new TreeMap<>();
  private final Map<String, Integer> errors = new TreeMap<>();
  private int entered;

  private LoadBench() {}

  public static void main(String[] args) throws Exception {
    Duration length = Duration.ofMinutes(args.length > 0 ? Integer.parseInt(args[0]) : 10);
    Path jar = Path.of(args.length > 1 ? args[1] : "target/limbspan.jar");
    String heap = args.length > 2 ? args[2] : "256m";
    Path folder = Files.createTempDirectory("limbspan-load");
    boolean good;
    try (ServiceProcess service =
        ServiceProcess.of(
            jar, folder.resolve("home"), List.of("-Xmx" + heap), List.of(), Map.of())) {
      service.start();
      good = new LoadBench().run(service, length);
    } finally {
      FileSystemUtils.deleteRecursively(folder);
    }
    System.exit(good ? 0 : 1);
  }

  private boolean run(ServiceProcess service, Duration length) throws Exception {
    try (Clients describing = new Clients(service::http)) {
      List<Future<?>> sent = new ArrayList<>();
      for (Deed deed : Deeds.bits(new Random(1))) {
        sent.add(describing.send(deed));
      }
      Clients.await(sent);
    }
    long before = held(service);
    long end = System.nanoTime() + length.toNanos();
    List<Thread> threads =
        IntStream.range(0, CLIENTS)
            .mapToObj(
                number -> new Thread(() -> visit(service.http(), number, end), "client " + number))
            .toList();
    threads.forEach(Thread::start);
    List<String> memory = new ArrayList<>();
    while (System.nanoTime() < end) {
      memory.add(Memory.of(service));
      Thread.sleep(Math.max(1, Math.min(60_000, (end - System.nanoTime()) / 1_000_000)));
    }
    for (Thread thread : threads) {
      thread.join();
    }
    memory.add(Memory.of(service));
    long missing = before + entered - held(service);
    tell(length, memory, missing);
    return errors.isEmpty() && missing == 0;
  }

  private static long held(ServiceProcess service) throws IOException, InterruptedException {
    Stand stand = new Stand(service.http());
    long all = 0;
    for (String rig : Deeds.rigs()) {
      all += stand.readings(rig).size();
    }
    return all;
  }

  private void visit(Http http, int number, long end) {
    Random random = new Random(number);
    List<String> rigs = Deeds.rigs();
    try {
      for (int count = 0; System.nanoTime() < end; count++) {
        String rig = rigs.get(random.nextInt(rigs.size()));
        String at = FIRST.plusSeconds(60L * (count * (long) CLIENTS + number)).toString();
        switch (random.nextInt(10)) {
          case 0, 1, 2 -> post(http, "reading", rig, "application/json", reading(at), 1);
          case 3 -> post(http, "file of 20 readings", rig, "text/csv", file(count, number), 20);
          case 4, 5 -> get(http, "page of the cycle", "/rigs/" + rig + "/cycle");
          case 6 -> get(http, "page of tonight", "/rigs/" + rig + "/tonight");
          case 7 -> get(http, "readings, 500", "/api/rigs/" + rig + "/readings?limit=500");
          case 8 -> get(http, "judgement of the cycle", "/api/rigs/" + rig + "/cycle");
          default -> get(http, "ledger.zip", "/api/rigs/" + rig + "/ledger.zip");
        }
      }
    } catch (InterruptedException ended) {
      Thread.currentThread().interrupt();
    }
  }

  private static String reading(String at) {
    return "{\"takenAt\": \"%s\", \"axis\": \"horizontal\", \"diameterArcmin\": 31.2, \"uncertaintyArcmin\": 0.05}"
        .formatted(at);
  }

  /** In a year of its own for each client, so that no two lines are of one instant. */
  private static String file(int count, int number) {
    Instant first = Instant.parse((1990 + number) + "-01-01T00:00:00Z").plusSeconds(240L * count);
    return IntStream.range(0, 20)
        .mapToObj(i -> first.plusSeconds(12L * i) + ",horizontal,31.2,0.05")
        .collect(
            Collectors.joining("\n", "taken_at,axis,diameter_arcmin,uncertainty_arcmin\n", "\n"));
  }

  private void post(Http http, String what, String rig, String type, String body, int readings)
      throws InterruptedException {
    long began = System.nanoTime();
    Http.Reply reply = http.post("/api/rigs/" + rig + "/readings", type, body);
    keep(what, began, reply.status(), readings);
  }

  private void get(Http http, String what, String path) throws InterruptedException {
    long began = System.nanoTime();
    int status;
    if (path.endsWith(".zip")) {
      try (var body = http.stream(path)) {
        body.transferTo(OutputStream.nullOutputStream());
        status = 200;
      } catch (IOException cutOff) {
        status = Http.NO_ANSWER;
      }
    } else {
      status = http.status(path);
    }
    keep(what, began, status, 0);
  }

  private synchronized void keep(String what, long began, int status, int readings) {
    nanos.computeIfAbsent(what, key -> new ArrayList<>()).add(System.nanoTime() - began);
    if (status / 100 == 2) {
      entered += readings;
    } else {
      errors.merge(what + ": " + status, 1, Integer::sum);
    }
  }

  private void tell(Duration length, List<String> memory, long missing) {
    System.out.printf(
        "| request | count | median ms | 95 %% | 99 %% | longest |%n|---|---|---|---|---|---|%n");
    nanos.forEach(
        (what, all) -> {
          long[] sorted = all.stream().mapToLong(Long::longValue).sorted().toArray();
          System.out.printf(
              "| %s | %d | %.0f | %.0f | %.0f | %.0f |%n",
              what,
              sorted.length,
              ms(sorted, 0.5),
              ms(sorted, 0.95),
              ms(sorted, 0.99),
              ms(sorted, 1));
        });
    int all = nanos.values().stream().mapToInt(List::size).sum();
    System.out.printf(
        "%d requests in %d min, %.0f a second; errors %s; readings entered %d, missing %d%n",
        all, length.toMinutes(), all / (double) length.toSeconds(), errors, entered, missing);
    memory.forEach(line -> System.out.println("  " + line));
  }

  private static double ms(long[] sorted, double part) {
    return sorted[(int) Math.min(sorted.length - 1, Math.floor(part * sorted.length))] / 1e6;
  }
}

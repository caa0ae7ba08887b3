package org.limbspan.bench.service;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.Future;
import org.springframework.util.FileSystemUtils;

/**
 * Lets something go wrong for a minute while clients send, and tells what they saw and what is held
 * afterwards. Arguments: jar (target/limbspan.jar), then any of {@code disk} (full; a memory file
 * system is mounted, which needs root), {@code stopped} (the database), {@code frozen} (the
 * database answers nothing), {@code clock} (an hour forward and back; needs libfaketime). Ends with
 * status 1 if anything was lost, doubled or judged otherwise.
 */
public final class OutageBench {

  private static final Duration OUTAGE = Duration.ofMinutes(1);
  private static final long PACE_MILLIS = 280;

  private final Path jar;
  private final Map<String, String> expected;

  private OutageBench(Path jar, Map<String, String> expected) {
    this.jar = jar;
    this.expected = expected;
  }

  public static void main(String[] args) throws Exception {
    Path jar = Path.of(args.length > 0 ? args[0] : "target/limbspan.jar");
    List<String> kinds =
        args.length > 1
            ? List.of(args).subList(1, args.length)
            : List.of("disk", "stopped", "frozen", "clock");
    Path folder = Files.createTempDirectory("limbspan-outage");
    boolean good = true;
    try {
      Map<String, String> expected = Undisturbed.judgements(jar, folder.resolve("undisturbed"));
      OutageBench bench = new OutageBench(jar, expected);
      for (String kind : kinds) {
        good &= bench.run(kind, Files.createDirectory(folder.resolve(kind)));
      }
    } finally {
      FileSystemUtils.deleteRecursively(folder);
    }
    System.exit(good ? 0 : 1);
  }

  private boolean run(String kind, Path folder) throws Exception {
    try (Scene scene = Scene.of(kind, jar, folder)) {
      scene.service().start();
      return run(kind, scene);
    }
  }

  private boolean run(String kind, Scene scene) throws Exception {
    Http http = scene.service().http();
    Balance balance = new Balance();
    List<Deed> deeds = Deeds.bits(new Random(3));
    List<Future<?>> sent = new ArrayList<>();
    try (Clients clients = new Clients(() -> http);
        Onlooker onlooker =
            new Onlooker(http, List.of("/actuator/health", "/rigs/clean-hourly/cycle"))) {
      long began = System.nanoTime();
      boolean wrong = false;
      boolean right = false;
      for (Deed deed : deeds) {
        sent.add(clients.send(deed));
        Thread.sleep(PACE_MILLIS);
        Duration now = Duration.ofNanos(System.nanoTime() - began);
        if (!wrong && now.compareTo(Duration.ofSeconds(15)) > 0) {
          scene.outage().begin();
          wrong = true;
        }
        if (wrong && !right && now.compareTo(OUTAGE.plusSeconds(15)) > 0) {
          scene.outage().end();
          right = true;
        }
      }
      if (!right) {
        Thread.sleep(OUTAGE.toMillis());
        scene.outage().end();
      }
      long endedAt = System.nanoTime();
      Clients.await(sent);
      scene.service().awaitHealth();
      deeds.forEach(balance::add);
      Stand stand = new Stand(http);
      for (String rig : Deeds.rigs()) {
        balance.compare(rig, stand);
      }
      List<String> different = Undisturbed.differences(expected, stand.judgements(Deeds.rigs()));
      System.out.printf(
          "%s: answers by status (-1: none) %s, repeated %d, all answered %.1f s after the last was sent%n",
          kind, clients.answers(), clients.repeats(), (System.nanoTime() - endedAt) / 1e9);
      clients.troubles().forEach((words, count) -> System.out.printf("  %s x %s%n", words, count));
      onlooker.changes().forEach(System.out::println);
      System.out.printf(
          "  longest wait for a page or health: %.1f s%n", onlooker.longest().toMillis() / 1000.0);
      System.out.printf(
          "  readings %d: lost %d, doubled %d, never sent %d; of %d judged parts %d differ %s%n",
          balance.count(),
          balance.lost(),
          balance.doubled(),
          balance.foreign(),
          expected.size(),
          different.size(),
          different);
      return different.isEmpty() && balance.lost() + balance.doubled() + balance.foreign() == 0;
    }
  }
}

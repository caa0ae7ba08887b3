package org.limbspan.bench.service;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import org.springframework.util.FileSystemUtils;

/**
 * Kills the service, its database or both at random moments of intake, judging and export, round
 * after round, while clients repeat what was not answered; then compares what is held with what was
 * answered, and the judgement with that of a service which nobody disturbed. Arguments: rounds
 * (200), jar (target/limbspan.jar), seed (1). Ends with status 1 if anything was lost, doubled or
 * judged otherwise.
 *
 * <p>With one service it is the one with the embedded database. With {@code two} as the fourth
 * argument two instances share a database, take the clients' requests in turn, and one of them, or
 * a process of the database, is killed.
 */
public final class FaultBench {

  private final int rounds;
  private final Path jar;
  private final Random random;
  private final Balance balance = new Balance();
  private final Map<String, Integer> kills = new TreeMap<>();
  private int duringIntake;
  private int duringExport;
  private int judgingLeft;
  private Duration longestRecovery = Duration.ZERO;
  private Duration recoveries = Duration.ZERO;

  private FaultBench(int rounds, Path jar, long seed) {
    this.rounds = rounds;
    this.jar = jar;
    this.random = new Random(seed);
  }

  public static void main(String[] args) throws Exception {
    int rounds = args.length > 0 ? Integer.parseInt(args[0]) : 200;
    Path jar = Path.of(args.length > 1 ? args[1] : "target/limbspan.jar");
    long seed = args.length > 2 ? Long.parseLong(args[2]) : 1;
    boolean two = args.length > 3 && args[3].equals("two");
    Path folder = Files.createTempDirectory("limbspan-faults");
    boolean good;
    try {
      good = new FaultBench(rounds, jar, seed).run(folder, two);
    } finally {
      FileSystemUtils.deleteRecursively(folder);
    }
    System.exit(good ? 0 : 1);
  }

  private boolean run(Path folder, boolean two) throws Exception {
    Map<String, String> expected = Undisturbed.judgements(jar, folder.resolve("undisturbed"));
    List<Deed> deeds = Deeds.bits(random);
    try (Household household =
        two ? Household.ofTwo(jar, folder) : Household.ofOne(jar, folder.resolve("home"))) {
      household.start();
      try (Clients clients = new Clients(household::next);
          Exports exports =
              new Exports(Deeds.rigs(), household::next, folder.resolve("export.zip"), 7)) {
        for (int round = 0; round < rounds; round++) {
          int from = deeds.size() * round / rounds;
          int to = deeds.size() * (round + 1) / rounds;
          round(household, clients, exports, deeds.subList(from, to));
          if ((round + 1) % 10 == 0) {
            System.out.printf(
                "%d rounds, %d readings, lost %d, doubled %d%n",
                round + 1, balance.count(), balance.lost(), balance.doubled());
          }
        }
        household.awaitHealth();
        for (String rig : Deeds.rigs()) {
          balance.compare(rig, household.stand());
        }
        Map<String, String> found = household.stand().judgements(Deeds.rigs());
        List<String> different = Undisturbed.differences(expected, found);
        tell(clients, exports, expected.size(), different);
        return different.isEmpty()
            && balance.lost() + balance.doubled() + balance.foreign() + exports.unfit() == 0;
      }
    }
  }

  private void round(Household household, Clients clients, Exports exports, List<Deed> deeds)
      throws IOException, InterruptedException {
    List<Future<?>> sent = new ArrayList<>();
    deeds.forEach(deed -> sent.add(clients.send(deed)));
    Thread.sleep(random.nextInt(10) < 6 ? random.nextInt(60) : random.nextInt(900));
    if (clients.underWay() > 0) {
      duringIntake++;
    }
    if (exports.isUnderWay()) {
      duringExport++;
    }
    long killedAt = System.nanoTime();
    kills.merge(household.kill(random), 1, Integer::sum);
    household.recover();
    Duration recovery = Duration.ofNanos(System.nanoTime() - killedAt);
    recoveries = recoveries.plus(recovery);
    longestRecovery = recovery.compareTo(longestRecovery) > 0 ? recovery : longestRecovery;
    if (isAnyPending(household)) {
      judgingLeft++;
    }
    Clients.await(sent);
    deeds.forEach(balance::add);
    for (String rig :
        deeds.stream().map(Deed::rig).collect(Collectors.toCollection(TreeSet::new))) {
      balance.compare(rig, household.stand());
    }
  }

  private boolean isAnyPending(Household household) throws InterruptedException {
    for (String rig : balance.rigs()) {
      try {
        if (household.stand().isPending(rig)) {
          return true;
        }
      } catch (IOException stillDown) {
        return true;
      }
    }
    return false;
  }

  private void tell(Clients clients, Exports exports, int parts, List<String> different) {
    System.out.printf("killed: %s%n", kills);
    System.out.printf(
        "of %d rounds a request was under way in %d, an export in %d, judging was behind after %d%n",
        rounds, duringIntake, duringExport, judgingLeft);
    System.out.printf(
        "answers by status (-1: none): %s; repeated %d%n", clients.answers(), clients.repeats());
    clients.troubles().forEach((words, count) -> System.out.printf("  %s x %s%n", words, count));
    System.out.printf("ledgers fetched: %s%n", exports.told());
    System.out.printf(
        "from kill to health 200: mean %.1f s, longest %.1f s%n",
        recoveries.toMillis() / 1000.0 / rounds, longestRecovery.toMillis() / 1000.0);
    System.out.printf(
        "readings %d: lost %d, doubled %d, never sent %d; of %d judged parts %d differ %s%n",
        balance.count(),
        balance.lost(),
        balance.doubled(),
        balance.foreign(),
        parts,
        different.size(),
        different);
  }
}

package org.limbspan.bench.service;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.util.FileSystemUtils;

/**
 * What a round of judging costs the service after one more reading, with one, two, five and ten
 * years held: to read the ledger, to judge it, to write what came out. Medians of the rounds that
 * the service's own log tells, milliseconds. Arguments: jar (target/limbspan.jar); readings more
 * (40).
 */
public final class RoundBench {

  private static final Pattern ROUND =
      Pattern.compile("(\\d+) readings, read in (\\d+) ms, judged in (\\d+) ms, written in (\\d+)");

  private RoundBench() {}

  public static void main(String[] args) throws Exception {
    Path jar = Path.of(args.length > 0 ? args[0] : "target/limbspan.jar");
    int more = args.length > 1 ? Integer.parseInt(args[1]) : 40;
    Path folder = Files.createTempDirectory("limbspan-round");
    List<String> lines = TenYears.csv(15_000 + more).lines().toList();
    try (ServiceProcess service =
        ServiceProcess.of(
            jar,
            folder.resolve("home"),
            List.of("-Xmx512m"),
            List.of("--logging.level.org.limbspan.watch.JudgingRound=debug"),
            Map.of())) {
      service.start();
      service.http().post("/api/rigs", "application/json", TenYears.RIG);
      System.out.printf("%8s %6s %6s %6s%n", "readings", "read", "judge", "write");
      int held = 0;
      for (int count : new int[] {1500, 3000, 7500, 15_000}) {
        send(service, lines, held, count);
        for (int next = count; next < count + more; next++) {
          send(service, lines, next, next + 1);
        }
        held = count + more;
        tell(service, count, more);
      }
    } finally {
      FileSystemUtils.deleteRecursively(folder);
    }
  }

  private static void send(ServiceProcess service, List<String> lines, int from, int to)
      throws IOException, InterruptedException {
    String csv = lines.get(0) + "\n" + String.join("\n", lines.subList(from + 1, to + 1)) + "\n";
    Http.Reply reply =
        service.http().post("/api/rigs/" + TenYears.SLUG + "/readings", "text/csv", csv);
    if (reply.status() != 200) {
      throw new IOException("readings: " + reply.status() + " " + reply.problem());
    }
    while (service
        .http()
        .get("/api/rigs/" + TenYears.SLUG + "/hypotheses")
        .json()
        .path("pending")
        .asBoolean(true)) {
      Thread.sleep(20);
    }
  }

  private static void tell(ServiceProcess service, int count, int more) throws IOException {
    List<int[]> rounds = new ArrayList<>();
    for (String line : Files.readAllLines(service.log())) {
      Matcher round = ROUND.matcher(line);
      if (round.find() && Integer.parseInt(round.group(1)) > count) {
        rounds.add(
            new int[] {
              Integer.parseInt(round.group(2)),
              Integer.parseInt(round.group(3)),
              Integer.parseInt(round.group(4))
            });
      }
    }
    System.out.printf(
        Locale.ROOT,
        "%8d %6d %6d %6d   (%d rounds)%n",
        count,
        median(rounds, 0),
        median(rounds, 1),
        median(rounds, 2),
        Math.min(more, rounds.size()));
  }

  private static int median(List<int[]> rounds, int part) {
    int[] sorted = rounds.stream().mapToInt(round -> round[part]).sorted().toArray();
    return Arrays.stream(sorted).skip(sorted.length / 2).findFirst().orElse(-1);
  }
}

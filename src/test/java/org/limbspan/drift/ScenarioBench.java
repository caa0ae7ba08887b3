package org.limbspan.drift;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.limbspan.sky.Sky;
import org.limbspan.sky.SkyFixture;

/**
 * What is found in a year of readings when one known thing went wrong in it. Arguments: how many
 * rigs a scenario (default 40), the cadence, and a part of the scenarios' names.
 */
final class ScenarioBench {

  private static final int SCHEDULES = 20;

  private final Judge judge;
  private final List<Schedule> schedules;

  private ScenarioBench(Schedule.Cadence cadence) {
    Sky sky = SkyFixture.sky();
    judge = new Judge(sky);
    schedules =
        IntStream.range(0, SCHEDULES)
            .mapToObj(i -> Schedule.of(sky, cadence, 1.1, 3000 + i))
            .toList();
  }

  public static void main(String[] arguments) {
    int count = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 40;
    String cadence = arguments.length > 1 ? arguments[1] : "PAIRS";
    String part = arguments.length > 2 ? arguments[2] : "";
    ScenarioBench bench = new ScenarioBench(Schedule.Cadence.valueOf(cadence));
    System.out.println(
        "raised: per rig, also what was taken back; delay: readings to the evidence;");
    System.out.println("onset: how often the interval holds it; size: mean, in percent");
    Scenario.all().stream()
        .filter(scenario -> scenario.name().contains(part))
        .forEach(scenario -> bench.run(scenario, count));
  }

  private void run(Scenario scenario, int count) {
    Map<String, Integer> found = new TreeMap<>();
    Map<String, Integer> causes = new TreeMap<>();
    int raised = 0;
    int any = 0;
    int held = 0;
    long delays = 0;
    double sizes = 0;
    for (int i = 0; i < count; i++) {
      Schedule schedule = schedules.get(i % SCHEDULES);
      int onset = schedule.sights().size() / 3 + i % 17;
      InventedRig rig = new InventedRig(schedule, scenario.logged(), 4_000_000 + i);
      scenario.fault().breakDown(rig, schedule, onset);
      RigHistory history = rig.history();
      List<Finding> findings = judge.judge(history);
      raised += judge.scan(history, history.setups().get(0)).raised().size();
      found.merge(words(findings), 1, Integer::sum);
      if (!findings.isEmpty()) {
        Finding first = findings.get(0);
        any++;
        causes.merge(first.likelyCauses().get(0).cause().label(), 1, Integer::sum);
        delays += delay(schedule, onset, first.evidenceAt());
        held += holds(first, schedule, onset) ? 1 : 0;
        sizes += first.sizePercent();
      }
    }
    System.out.printf(
        Locale.ROOT,
        "%-34s raised %.2f delay %5.1f onset %d/%d size %.3f %s %s%n",
        scenario.name(),
        (double) raised / count,
        (double) delays / Math.max(1, any),
        held,
        any,
        sizes / Math.max(1, any),
        found,
        causes);
  }

  private static String words(List<Finding> findings) {
    return findings.stream()
        .map(each -> each.kind().label() + (each.until().isPresent() ? " (ended)" : ""))
        .toList()
        .toString();
  }

  private static long delay(Schedule schedule, int onset, Instant evidenceAt) {
    return schedule.sights().stream()
        .skip(onset)
        .filter(sight -> !sight.at().isAfter(evidenceAt))
        .count();
  }

  private static boolean holds(Finding finding, Schedule schedule, int onset) {
    return !finding.onsetFrom().isAfter(schedule.sights().get(onset).at())
        && !finding.onsetTo().isBefore(schedule.sights().get(onset - 1).at());
  }
}

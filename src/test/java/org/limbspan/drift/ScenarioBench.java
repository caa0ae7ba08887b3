package org.limbspan.drift;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.limbspan.sky.Axis;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Sky;
import org.limbspan.sky.SkyFixture;

/** What is found in a year of readings when one known thing went wrong in it. */
final class ScenarioBench {

  private static final int SCHEDULES = 20;

  private final Sky sky = SkyFixture.sky();
  private final Judge judge = new Judge(sky);
  private final List<Schedule> schedules = new ArrayList<>();
  private final int count;
  private final String only;

  private ScenarioBench(int count, String only) {
    this.count = count;
    this.only = only;
    for (int i = 0; i < SCHEDULES; i++) {
      schedules.add(Schedule.of(sky, Schedule.Cadence.PAIRS, 1.1, 3000 + i));
    }
  }

  public static void main(String[] arguments) {
    int count = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 100;
    String only = arguments.length > 1 ? arguments[1] : "";
    ScenarioBench bench = new ScenarioBench(count, only);
    bench.run("clean", (schedule, onset) -> rig -> {});
    for (double percent : new double[] {0.3, -0.5, 1, -3, 8}) {
      bench.run(
          "step " + percent,
          (schedule, onset) ->
              rig ->
                  rig.scale(
                      at -> at.isBefore(schedule.sights().get(onset).at()) ? 0 : percent / 100));
    }
    bench.run(
        "step 0.5 and back after 20",
        (schedule, onset) ->
            rig ->
                rig.scale(
                    at ->
                        at.isBefore(schedule.sights().get(onset).at())
                                || !at.isBefore(schedule.sights().get(onset + 20).at())
                            ? 0
                            : 0.005));
    bench.run(
        "step 0.5 and another -1 after 20",
        (schedule, onset) ->
            rig ->
                rig.scale(
                    at ->
                        at.isBefore(schedule.sights().get(onset).at())
                            ? 0
                            : at.isBefore(schedule.sights().get(onset + 20).at())
                                ? 0.005
                                : -0.005));
    for (double percent : new double[] {0.05, -0.1, 0.3}) {
      bench.run(
          "drift " + percent,
          (schedule, onset) ->
              rig ->
                  rig.scale(
                      at ->
                          Math.max(
                                  0,
                                  (Fact.daysOf(at)
                                      - Fact.daysOf(schedule.sights().get(onset).at())))
                              * percent
                              / 3000));
    }
    bench.run(
        "drift 0.2 for 30 readings",
        (schedule, onset) ->
            rig ->
                rig.scale(
                    at ->
                        Math.max(
                            0,
                            (Math.min(
                                        Fact.daysOf(at),
                                        Fact.daysOf(schedule.sights().get(onset + 30).at()))
                                    - Fact.daysOf(schedule.sights().get(onset).at()))
                                * 0.2
                                / 3000)));
    for (double factor : new double[] {2, 3, 5}) {
      bench.run("scatter " + factor, (schedule, onset) -> rig -> rig.scatterFrom(onset, factor));
    }
    for (double percent : new double[] {-2, 1, -9, 0.7}) {
      bench.run(
          "calibration " + percent,
          (schedule, onset) -> rig -> rig.wrongCalibration(3, percent / 100));
      bench.run(
          "first calibration " + percent,
          (schedule, onset) -> rig -> rig.wrongCalibration(0, percent / 100));
      bench.run("target " + percent, (schedule, onset) -> rig -> rig.wrongTarget(percent / 100));
    }
    for (Axis axis : Axis.values()) {
      for (int from : new int[] {0, -1}) {
        bench.run(
            "measured along " + axis + (from == 0 ? " from start" : ""),
            (schedule, onset) -> rig -> rig.measuredFrom(from == 0 ? 0 : onset, axis));
      }
    }
    for (String zone : new String[] {"Asia/Kolkata", "Europe/Madrid", "America/Denver"}) {
      bench.run(
          "local time " + zone,
          (schedule, onset) ->
              rig -> rig.zone(ZoneId.of(zone)).clockFrom(onset, at -> local(at, ZoneId.of(zone))));
      bench.run(
          "local time from start " + zone,
          (schedule, onset) ->
              rig -> rig.zone(ZoneId.of(zone)).clockFrom(0, at -> local(at, ZoneId.of(zone))));
    }
    for (int minutes : new int[] {60, -60, 720, 200}) {
      bench.run(
          "clock " + minutes + " min",
          (schedule, onset) ->
              rig -> rig.clockFrom(onset, at -> at.plus(Duration.ofMinutes(minutes))));
    }
    bench.run(
        "near Moon", (schedule, onset) -> rig -> rig.world(sight -> near(schedule, sight, 4828)));
    bench.run(
        "near Moon 8000",
        (schedule, onset) -> rig -> rig.world(sight -> near(schedule, sight, 8000)));
    bench.run(
        "swing +10 %",
        (schedule, onset) ->
            rig -> rig.world(sight -> -0.1 * Math.log(sight.geocentricDistanceKm() / 384400)));
    bench.run(
        "ratio +30 %",
        (schedule, onset) ->
            rig ->
                rig.world(
                    sight ->
                        -0.3
                            * Math.log(
                                sight.topocentricDistanceKm() / sight.geocentricDistanceKm())));
  }

  private static double near(Schedule schedule, MoonSight sight, double heightKm) {
    double here = 111.195 * (90 - schedule.site().latitudeDeg());
    double there = 111.195 * (90 - sight.sublunarLatitudeDeg());
    double angle = Math.toRadians(sight.sublunarLongitudeDeg() - schedule.site().longitudeDeg());
    double square = here * here + there * there - 2 * here * there * Math.cos(angle);
    return Math.log(5500 / Math.sqrt(square + heightKm * heightKm))
        - Math.log(sight.horizontalDiameterArcmin() / 31);
  }

  private static Instant local(Instant at, ZoneId zone) {
    return at.atZone(zone).toLocalDateTime().toInstant(ZoneOffset.UTC);
  }

  private interface Maker {
    java.util.function.Consumer<InventedRig> of(Schedule schedule, int onset);
  }

  private void run(String name, Maker maker) {
    if (!name.contains(only)) {
      return;
    }
    Map<String, Integer> outcomes = new TreeMap<>();
    Map<String, Integer> lead = new TreeMap<>();
    int raised = 0;
    double delays = 0;
    int delayed = 0;
    int covered = 0;
    double sizes = 0;
    int sized = 0;
    for (int i = 0; i < count; i++) {
      Schedule schedule = schedules.get(i % SCHEDULES);
      int onset = 40 + i % 17;
      InventedRig rig = new InventedRig(schedule, axis(name, i), 4_000_000 + i);
      maker.of(schedule, onset).accept(rig);
      RigHistory history = rig.history();
      List<Finding> findings = judge.judge(history);
      raised += judge.scan(history, history.setups().get(0), NoisePrior.AS_STATED).raised().size();
      outcomes.merge(
          findings.stream()
              .map(f -> f.kind().label() + (f.until().isPresent() ? " (ended)" : ""))
              .toList()
              .toString(),
          1,
          Integer::sum);
      if (!findings.isEmpty()) {
        Finding f = findings.get(0);
        lead.merge(f.likelyCauses().get(0).cause().label(), 1, Integer::sum);
        Instant truth = schedule.sights().get(onset).at();
        delayed++;
        delays +=
            schedule.sights().stream()
                .filter(s -> !s.at().isBefore(truth) && !s.at().isAfter(f.evidenceAt()))
                .count();
        Instant gap = schedule.sights().get(onset - 1).at();
        if (!f.onsetFrom().isAfter(truth) && !f.onsetTo().isBefore(gap)) covered++;
        sizes += f.sizePercent();
        sized++;
      }
    }
    System.out.printf(
        "%-32s raised %.2f  delay %.1f onset covered %d/%d size %.3f %s %s%n",
        name,
        (double) raised / count,
        delays / Math.max(1, delayed),
        covered,
        delayed,
        sizes / Math.max(1, sized),
        outcomes,
        lead);
  }

  private static Axis axis(String name, int i) {
    if (name.contains("along HORIZONTAL")) return Axis.VERTICAL;
    return i % 4 == 0 && !name.contains("along")
        ? Axis.VERTICAL
        : i % 4 == 1 && !name.contains("LIMB") ? Axis.LIMB_FIT : Axis.HORIZONTAL;
  }
}

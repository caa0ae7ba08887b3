package org.limbspan.drift;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Sky;
import org.limbspan.sky.SkyFixture;

/**
 * How often alerts come without cause, and how soon with one: thousands of invented rig-years, with
 * the project's own generator and its own random streams.
 */
final class DetectionBench {

  private static final int SCHEDULES = 24;
  private static final double YEARS = 3;

  private final Sky sky = SkyFixture.sky();
  private final Judge judge = new Judge(sky);
  private final List<Schedule> schedules = new ArrayList<>();

  private DetectionBench() {
    for (int i = 0; i < SCHEDULES; i++) {
      schedules.add(Schedule.of(sky, Schedule.Cadence.PAIRS, YEARS, 1000 + i));
    }
    double readings = schedules.stream().mapToInt(s -> s.sights().size()).average().orElseThrow();
    System.out.printf("readings a year %.1f%n", readings / YEARS);
  }

  public static void main(String[] arguments) {
    DetectionBench bench = new DetectionBench();
    int rigs = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 700;
    int changes = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 1000;
    bench.falseAlerts(rigs);
    for (int history : Integer.getInteger("h120", 0) > 0 ? new int[] {40, 120} : new int[] {40}) {
      for (double size : new double[] {0.2, 0.3, 0.5, 1, 2}) {
        bench.delay(history, size, false, changes);
      }
      for (double size : new double[] {0.05, 0.1, 0.2, 0.3}) {
        bench.delay(history, size, true, changes);
      }
    }
  }

  private static Axis axisOf(int i) {
    return i % 4 == 0 ? Axis.VERTICAL : i % 4 == 1 ? Axis.LIMB_FIT : Axis.HORIZONTAL;
  }

  private void falseAlerts(int rigs) {
    long started = System.nanoTime();
    Map<Change, Integer> raised = new EnumMap<>(Change.class);
    int standing = 0;
    int total = 0;
    int firstYear = 0;
    long facts = 0;
    for (int i = 0; i < rigs; i++) {
      InventedRig rig =
          new InventedRig(schedules.get(i % SCHEDULES), axisOf(i / SCHEDULES), 5000 + i);
      RigHistory history = rig.history();
      Scan scan = judge.scan(history, history.setups().get(0));
      for (Raised each : scan.raised()) {
        raised.merge(each.change(), 1, Integer::sum);
        total++;
        if (each.index() < 114) {
          firstYear++;
        }
      }
      standing += scan.confirmed().size();
      facts += scan.facts().size();
    }
    double years = rigs * YEARS;
    System.out.printf(
        "clean: %.0f rig-years, %d raised (one in %.2f years; %d in year 1), %d standing, %s; %.1f us a fact%n",
        years,
        total,
        years / total,
        firstYear,
        standing,
        raised,
        (System.nanoTime() - started) / 1e3 / facts);
  }

  private void delay(int history, double percent, boolean drift, int changes) {
    double sum = 0;
    double squares = 0;
    int count = 0;
    int missed = 0;
    Map<Change, Integer> kinds = new EnumMap<>(Change.class);
    for (int i = 0; i < changes; i++) {
      Schedule schedule = schedules.get(i % SCHEDULES);
      double sign = i / SCHEDULES % 2 == 0 ? 1 : -1;
      SplittableRandom random = new SplittableRandom(77 + i);
      double part = random.nextDouble();
      double before = Fact.daysOf(schedule.sights().get(history - 1).at());
      double after = Fact.daysOf(schedule.sights().get(history).at());
      double onset = before + part * (after - before);
      InventedRig rig = new InventedRig(schedule, axisOf(i / SCHEDULES / 2), 900_000 + i);
      RigHistory clean =
          rig.scale(
                  at -> {
                    double days = Fact.daysOf(at) - onset;
                    return days < 0 ? 0 : sign * percent / 100 * (drift ? days / 30 : 1);
                  })
              .history();
      int delay = delay(clean, history);
      if (delay > 0) {
        sum += delay;
        squares += delay * delay;
        count++;
        kinds.merge(lastKind, 1, Integer::sum);
      } else {
        missed++;
      }
    }
    double mean = sum / count;
    System.out.printf(
        "history %d, %s %.2f %%: mean delay %.2f +- %.2f readings (%d counted, %d left out) %s%n",
        history,
        drift ? "drift" : "step",
        percent,
        mean,
        Math.sqrt((squares / count - mean * mean) / count),
        count,
        missed,
        kinds);
  }

  private Change lastKind = Change.NONE;

  /** Readings from the onset to the first alert; 0 where one came before, or none in time. */
  private int delay(RigHistory rig, int history) {
    Scan scan = judge.open(rig, rig.setups().get(0), NoisePrior.AS_STATED, Carried.NOTHING);
    int readings = 0;
    for (Fact fact : Timeline.of(rig.setups().get(0))) {
      scan.take(fact);
      if (fact.isReading()) {
        readings++;
        if (!scan.raised().isEmpty()) {
          if (scan.confirmed().isEmpty() && readings <= history) return 0;
          lastKind = scan.raised().get(0).change();
          return readings > history ? readings - history : 0;
        }
        if (readings > history + 150) {
          return 0;
        }
      }
    }
    return 0;
  }
}

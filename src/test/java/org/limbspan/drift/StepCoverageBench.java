package org.limbspan.drift;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Sky;
import org.limbspan.sky.SkyFixture;

/**
 * Whether the stated uncertainty of a step's size and the interval of its onset hold: one invented
 * year of pairs after the other, each with one step. Prints the root mean square of the error over
 * its uncertainty, the mean error, and how often the interval of 95 percent holds the onset.
 */
final class StepCoverageBench {

  private static final int RIGS = 300;
  private static final int SCHEDULES = 20;

  private StepCoverageBench() {}

  public static void main(String[] arguments) {
    Sky sky = SkyFixture.sky();
    Judge judge = new Judge(sky);
    List<Schedule> schedules =
        java.util.stream.IntStream.range(0, SCHEDULES)
            .mapToObj(i -> Schedule.of(sky, Schedule.Cadence.PAIRS, 1, 7000 + i))
            .toList();
    System.out.println("step %  found alone  normalised rms  mean error %  onset held");
    for (double percent : new double[] {0.3, 0.5, -0.5, 1, 2}) {
      print(judge, schedules, percent);
    }
  }

  private static void print(Judge judge, List<Schedule> schedules, double percent) {
    double squares = 0;
    double errors = 0;
    int alone = 0;
    int held = 0;
    for (int i = 0; i < RIGS; i++) {
      Schedule schedule = schedules.get(i % SCHEDULES);
      Instant onset = schedule.sights().get(40 + i % 17).at();
      InventedRig rig = new InventedRig(schedule, Axis.HORIZONTAL, 9_000_000 + i);
      rig.scale(at -> at.isBefore(onset) ? 0 : percent / 100);
      List<Finding> findings = judge.judge(rig.history());
      if (findings.size() == 1 && findings.get(0).kind() == AlertKind.SCALE_STEP) {
        Finding found = findings.get(0);
        double error = found.sizePercent() - percent;
        alone++;
        errors += error;
        squares += Math.pow(error / found.uncertaintyPercent(), 2);
        held += onset.isBefore(found.onsetFrom()) || onset.isAfter(found.onsetTo()) ? 0 : 1;
      }
    }
    System.out.printf(
        Locale.ROOT,
        "%6.1f %12d %15.2f %13.4f %11d%n",
        percent,
        alone,
        Math.sqrt(squares / alone),
        errors / alone,
        held);
  }
}

package org.limbspan.dashboard;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.limbspan.cycle.Observation;
import org.limbspan.watch.Alert;

/**
 * The level of the residuals in each stretch between setups and judged steps: their median, which a
 * few readings gone astray do not move. A step that was answered bounds no stretch of its own: what
 * followed from the answer, such as a new setup, does.
 */
final class ResidualLevels {

  private ResidualLevels() {}

  /**
   * One stretch.
   *
   * @param from instant of its first reading
   * @param to instant of its last reading
   * @param percent median residual
   */
  record Level(Instant from, Instant to, double percent, int readings) {}

  /** Stretches that hold a reading, oldest first. */
  static List<Level> of(LedgerFacts facts) {
    List<Instant> bounds =
        Stream.concat(
                facts.setupsStartedAt().stream(),
                facts.alerts().stream()
                    .filter(alert -> alert.kind().equals("scale-step"))
                    .filter(alert -> alert.state().equals("raised"))
                    .map(Alert::onsetAt))
            .sorted()
            .toList();
    List<Level> levels = new ArrayList<>();
    List<Observation> left = facts.observations();
    for (Instant bound : bounds) {
      int end = (int) left.stream().takeWhile(o -> o.takenAt().isBefore(bound)).count();
      add(levels, left.subList(0, end));
      left = left.subList(end, left.size());
    }
    add(levels, left);
    return levels;
  }

  private static void add(List<Level> levels, List<Observation> stretch) {
    if (!stretch.isEmpty()) {
      levels.add(
          new Level(
              stretch.get(0).takenAt(),
              stretch.get(stretch.size() - 1).takenAt(),
              medianPercent(stretch),
              stretch.size()));
    }
  }

  /** Median residual of readings, 1 or more, in percent. */
  static double medianPercent(List<Observation> stretch) {
    return 100 * Medians.of(stretch.stream().mapToDouble(Observation::residual));
  }
}

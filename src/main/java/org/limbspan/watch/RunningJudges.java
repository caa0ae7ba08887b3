package org.limbspan.watch;

import java.util.LinkedHashMap;
import java.util.Map;
import org.limbspan.cycle.RunningSelfReliantEstimator;
import org.limbspan.drift.RunningJudge;
import org.limbspan.sky.Sky;

/**
 * Remembers how far the rigs that were judged last have been followed, so that one more reading
 * costs little. What is forgotten is followed again from the beginning, to the same answer.
 */
final class RunningJudges {

  private static final int MOST = 16;

  private final Sky sky;
  private final Map<Long, Running> running =
      new LinkedHashMap<>(MOST, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Long, Running> eldest) {
          return size() > MOST;
        }
      };

  RunningJudges(Sky sky) {
    this.sky = sky;
  }

  /** What is remembered of one rig; to be used by one thread at a time. */
  synchronized Running of(long rigId) {
    return running.computeIfAbsent(
        rigId,
        id ->
            new Running(
                new RunningJudge(sky), new RunningSelfReliantEstimator(), new Culminations(sky)));
  }

  /**
   * One rig.
   *
   * @param changes what changed in it
   * @param selfReliant its readings' own cycle
   * @param culminations over its site
   */
  record Running(
      RunningJudge changes, RunningSelfReliantEstimator selfReliant, Culminations culminations) {}
}

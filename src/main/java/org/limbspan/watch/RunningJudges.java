package org.limbspan.watch;

import org.limbspan.cycle.CycleMemory;
import org.limbspan.cycle.RunningSelfReliantEstimator;
import org.limbspan.drift.RunningJudge;
import org.limbspan.sky.Sky;
import org.springframework.util.ConcurrentLruCache;

/**
 * Remembers how far the rigs that were judged last have been followed, so that one more reading
 * costs little. What is forgotten is followed again from the beginning, to the same answer.
 */
final class RunningJudges {

  private static final int MOST = 16;

  private final ConcurrentLruCache<Long, Running> running;

  RunningJudges(Sky sky) {
    running =
        new ConcurrentLruCache<>(
            MOST,
            rigId ->
                new Running(
                    new RunningJudge(sky),
                    new CycleMemory(),
                    new RunningSelfReliantEstimator(),
                    new RunningSelfReliantEstimator(),
                    new Culminations(sky),
                    new KnownNights(),
                    new KnownObservations(),
                    new KnownObservations()));
  }

  /** What is remembered of one rig; to be used by one thread at a time. */
  Running of(long rigId) {
    return running.get(rigId);
  }

  /**
   * One rig.
   *
   * @param changes what changed in it
   * @param cycle what the estimators worked out of its settled past
   * @param selfReliant its readings' own cycle
   * @param sighted the same with the altitudes that were sighted
   * @param culminations over its site
   * @param nights of it
   * @param observations as entered
   * @param asJudged with what was found taken into account
   */
  record Running(
      RunningJudge changes,
      CycleMemory cycle,
      RunningSelfReliantEstimator selfReliant,
      RunningSelfReliantEstimator sighted,
      Culminations culminations,
      KnownNights nights,
      KnownObservations observations,
      KnownObservations asJudged) {}
}

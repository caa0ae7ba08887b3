package org.limbspan.watch;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.limbspan.drift.Finding;
import org.limbspan.drift.RigHistory;
import org.limbspan.drift.RunningJudge;
import org.limbspan.sky.Sky;

/**
 * Remembers how far the rigs that were judged last have been followed, so that one more reading
 * costs little. What is forgotten is followed again from the beginning, to the same answer.
 */
final class RunningJudges {

  private static final int MOST = 16;

  private final Sky sky;
  private final Map<Long, RunningJudge> judges =
      new LinkedHashMap<>(MOST, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Long, RunningJudge> eldest) {
          return size() > MOST;
        }
      };

  RunningJudges(Sky sky) {
    this.sky = sky;
  }

  synchronized List<Finding> judge(long rigId, RigHistory history) {
    return judges.computeIfAbsent(rigId, id -> new RunningJudge(sky)).judge(history);
  }
}

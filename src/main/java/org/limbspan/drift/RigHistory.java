package org.limbspan.drift;

import java.time.ZoneId;
import java.util.List;
import org.limbspan.sky.Site;

/**
 * Everything that is known of a rig. The order of the setups does not matter; they are told apart
 * by their number.
 *
 * @param zone the rig's civil time, for clocks that were set to it by mistake
 */
public record RigHistory(Site site, ZoneId zone, List<SetupHistory> setups) {

  public RigHistory {
    setups = List.copyOf(setups);
    if (setups.stream().map(SetupHistory::number).distinct().count() != setups.size()) {
      throw new IllegalArgumentException("setups: expected every number once");
    }
  }
}

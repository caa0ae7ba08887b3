package org.limbspan.cycle;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Site;

/**
 * {@link SelfReliantEstimator} for a rig whose readings grow: the search for a period in the
 * fullest year is done again only when that year has changed. The answer is the same to the last
 * bit.
 *
 * <p>For one rig, and one thread at a time.
 */
public final class RunningSelfReliantEstimator {

  private @Nullable Searched last;

  private record Searched(LunarFit.Beginning beginning, Optional<LunarFit.Result> result) {}

  /** As {@link SelfReliantEstimator#estimate}. */
  public Optional<SelfReliantCycle> estimate(
      List<Observation> observations, Site site, AltitudeSource altitudes) {
    return estimate(Series.of(observations, site), site, altitudes);
  }

  /** The same over a series. */
  public Optional<SelfReliantCycle> estimate(Series series, Site site, AltitudeSource altitudes) {
    return SelfReliantEstimator.estimate(series, site, altitudes, this::search);
  }

  private Optional<LunarFit.Result> search(LunarFit.Beginning beginning) {
    Searched known = last;
    if (known == null || !known.beginning().equals(beginning)) {
      known = new Searched(beginning, beginning.search());
      last = known;
    }
    return known.result();
  }
}

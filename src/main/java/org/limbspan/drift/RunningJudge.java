package org.limbspan.drift;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;

/**
 * Judges one rig again and again as its history grows: the same answers as {@link Judge}, but what
 * was followed before is not followed again. A reading that comes late is taken up from the last
 * stop before it; a calibration, which moves the scale of all readings, from the beginning.
 *
 * <p>Not safe for use by several threads.
 */
public final class RunningJudge {

  private static final int STOP_EVERY = 500;

  /** Where a scan stood: after so many facts. */
  private record Stop(Scan scan) {

    int count() {
      return scan.facts().size();
    }
  }

  private final Judge judge;
  private final Map<Integer, Followed> setups = new HashMap<>();

  /** A setup as it was followed, with the stops on the way. */
  private record Followed(Given given, List<Stop> stops, Timeline.Known timeline) {}

  /** What a scan was given beforehand: if that changes, it is to be done again. */
  private record Given(
      Site site, ZoneId zone, NoisePrior noise, double commonVariance, Carried carried) {}

  /**
   * @param sky for where the Moon stood at the instants that a wrong clock would mean
   */
  public RunningJudge(Sky sky) {
    judge = new Judge(sky);
  }

  /** Everything that the history shows, as {@link Judge#judge}. */
  public List<Finding> judge(RigHistory rig) {
    return judge.judge(rig, (setup, noise, carried) -> follow(rig, setup, noise, carried));
  }

  private Scan follow(RigHistory rig, SetupHistory setup, NoisePrior noise, Carried carried) {
    Followed known = setups.get(setup.number());
    List<Fact> facts = known == null ? Timeline.of(setup) : Timeline.of(setup, known.timeline());
    Given given = new Given(rig.site(), rig.zone(), noise, Judge.commonVariance(setup), carried);
    List<Stop> stops =
        known != null && known.given().equals(given)
            ? stopsWithin(known.stops(), facts)
            : List.of();
    Scan scan =
        stops.isEmpty()
            ? judge.open(rig, setup, noise, carried)
            : stops.get(stops.size() - 1).scan().snapshot();
    List<Stop> next = new ArrayList<>(stops);
    next.removeIf(stop -> stop.count() % STOP_EVERY != 0);
    for (int i = scan.facts().size(); i < facts.size(); i++) {
      scan.take(facts.get(i));
      if ((i + 1) % STOP_EVERY == 0) {
        next.add(new Stop(scan.snapshot()));
      }
    }
    next.add(new Stop(scan));
    setups.put(setup.number(), new Followed(given, next, new Timeline.Known(setup, facts)));
    return scan;
  }

  /** The stops up to which nothing differs. */
  private static List<Stop> stopsWithin(List<Stop> stops, List<Fact> facts) {
    List<Fact> known = stops.get(stops.size() - 1).scan().facts();
    int same = 0;
    while (same < Math.min(known.size(), facts.size())
        && known.get(same).isSameAs(facts.get(same))) {
      same++;
    }
    int alike = same;
    return stops.stream().filter(stop -> stop.count() <= alike).toList();
  }
}

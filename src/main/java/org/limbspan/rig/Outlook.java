package org.limbspan.rig;

import java.time.Instant;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.limbspan.sky.Apsis;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.WorthwhilePass;

/**
 * What lies ahead of a place.
 *
 * @param plans what the passes offer, in order of time
 * @param apsides in order of time
 */
public record Outlook(List<ShootingPlan> plans, List<Apsis> apsides) {

  /** Without the passes that are over by then and the apsides that are. */
  public Outlook after(Instant now) {
    return new Outlook(
        plans.stream().filter(plan -> plan.pass().endAt().isAfter(now)).toList(),
        apsides.stream().filter(apsis -> apsis.at().isAfter(now)).toList());
  }

  /** Those with a low and a high window in the dark. */
  public List<ShootingPlan> darkPairs() {
    return plans.stream().filter(ShootingPlan::isDarkPair).toList();
  }

  /** Those worth staying up for. */
  public List<WorthwhilePass> worthwhile() {
    return WorthwhilePass.among(plans, apsides);
  }

  /** Those of which an owner is told, in the calendar as by reminders: all of both, each once. */
  public static List<ShootingPlan> chosen(
      Collection<ShootingPlan> darkPairs, Collection<WorthwhilePass> worthwhile) {
    return Stream.concat(darkPairs.stream(), worthwhile.stream().map(WorthwhilePass::plan))
        .distinct()
        .sorted(Comparator.comparing(plan -> plan.pass().culminationAt()))
        .toList();
  }
}

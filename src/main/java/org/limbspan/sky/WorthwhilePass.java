package org.limbspan.sky;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A pass worth staying up for.
 *
 * @param reasons at least one
 * @param apsis the apsis that its high reading is nearest to, where {@link Reason#SWING} is one
 */
public record WorthwhilePass(ShootingPlan plan, Set<Reason> reasons, Optional<Apsis> apsis) {

  /** What the pass is good for. */
  public enum Reason {
    /** A night pair in the dark whose ratio is among the greatest. */
    RATIO,
    /** A high reading next to a perigee or an apogee. */
    SWING
  }

  public WorthwhilePass {
    reasons = Set.copyOf(reasons);
    if (reasons.isEmpty()) {
      throw new IllegalArgumentException("reasons: expected at least one");
    }
  }

  /**
   * Those of {@code plans} worth staying up for, in their order.
   *
   * <p>For the ratio: pairs in the dark whose ratio exceeds 1 by at least {@code 0.9} of what the
   * best of them does. For the swing: for each apsis the pass with its high window nearest to it,
   * within {@code 36 h} and in the dark if there is one, else in whatever light is offered. The
   * size changes by less than 0.7 percent in a day and a half about an apsis. Both limits are a
   * choice.
   */
  public static List<WorthwhilePass> among(List<ShootingPlan> plans, List<Apsis> apsides) {
    return new Worth(plans, apsides).passes();
  }
}

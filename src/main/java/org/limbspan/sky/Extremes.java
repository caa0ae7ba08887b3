package org.limbspan.sky;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;

/**
 * The greatest and least values of a smooth function of time, in order of time: sampled, then each
 * refined to 10 ms by Brent's method. Two extremes nearer than a step may both be missed. Samples
 * lie at whole multiples of the step, so that an extreme is the same whatever the interval asked
 * for.
 */
final class Extremes {

  private static final double TOLERANCE_DAYS = 1e-7;
  private static final int MOST_EVALUATIONS = 200;

  private Extremes() {}

  /** An extreme at a time in days. */
  record Extreme(double atDays, boolean greatest) {}

  /** All extremes inside {@code fromDays} to {@code toDays}. */
  static List<Extreme> of(
      UnivariateFunction function, double fromDays, double toDays, double stepDays) {
    List<Extreme> found = new ArrayList<>();
    long first = (long) Math.ceil(fromDays / stepDays);
    long last = (long) Math.floor(toDays / stepDays);
    double before = function.value(first * stepDays);
    double middle = function.value((first + 1) * stepDays);
    for (long step = first + 2; step <= last; step++) {
      double after = function.value(step * stepDays);
      boolean greatest = before < middle && middle >= after;
      boolean least = before > middle && middle <= after;
      if (greatest || least) {
        double startDays = (step - 2) * stepDays;
        found.add(new Extreme(refined(function, startDays, stepDays, greatest), greatest));
      }
      before = middle;
      middle = after;
    }
    return found;
  }

  /**
   * Searched as an offset from {@code startDays}, so that its digits are spent on the difference.
   */
  private static double refined(
      UnivariateFunction function, double startDays, double stepDays, boolean greatest) {
    return startDays
        + new BrentOptimizer(1e-10, TOLERANCE_DAYS)
            .optimize(
                new MaxEval(MOST_EVALUATIONS),
                new UnivariateObjectiveFunction(days -> function.value(startDays + days)),
                greatest ? GoalType.MAXIMIZE : GoalType.MINIMIZE,
                new SearchInterval(0, 2 * stepDays, stepDays))
            .getPoint();
  }
}

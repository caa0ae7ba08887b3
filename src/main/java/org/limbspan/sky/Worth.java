package org.limbspan.sky;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.limbspan.sky.WorthwhilePass.Reason;

/** Chooses the passes worth staying up for, as {@link WorthwhilePass#among} says. */
final class Worth {

  private static final double OF_BEST_EXCESS = 0.9;
  private static final Duration NEAR_APSIS = Duration.ofHours(36);

  private final List<ShootingPlan> plans;
  private final Map<ShootingPlan, Apsis> atApsides = new LinkedHashMap<>();
  private final double leastExcess;

  Worth(List<ShootingPlan> plans, List<Apsis> apsides) {
    this.plans = plans;
    for (Apsis apsis : apsides) {
      nearest(apsis, Worth::isHighInTheDark)
          .or(() -> nearest(apsis, plan -> true))
          .ifPresent(plan -> atApsides.put(plan, apsis));
    }
    this.leastExcess =
        OF_BEST_EXCESS
            * plans.stream()
                .filter(ShootingPlan::isDarkPair)
                .mapToDouble(Worth::excess)
                .max()
                .orElse(Double.POSITIVE_INFINITY);
  }

  List<WorthwhilePass> passes() {
    return plans.stream().map(this::judged).flatMap(Optional::stream).toList();
  }

  private Optional<WorthwhilePass> judged(ShootingPlan plan) {
    Set<Reason> reasons = EnumSet.noneOf(Reason.class);
    if (plan.isDarkPair() && excess(plan) >= leastExcess) {
      reasons.add(Reason.RATIO);
    }
    Optional<Apsis> apsis = Optional.ofNullable(atApsides.get(plan));
    if (apsis.isPresent()) {
      reasons.add(Reason.SWING);
    }
    return reasons.isEmpty()
        ? Optional.empty()
        : Optional.of(new WorthwhilePass(plan, reasons, apsis));
  }

  private Optional<ShootingPlan> nearest(Apsis apsis, Predicate<ShootingPlan> suits) {
    return plans.stream()
        .filter(plan -> plan.high().isPresent() && suits.test(plan))
        .filter(plan -> away(plan, apsis).compareTo(NEAR_APSIS) <= 0)
        .min(Comparator.comparing(plan -> away(plan, apsis)));
  }

  private static boolean isHighInTheDark(ShootingPlan plan) {
    return plan.high().filter(window -> window.light().isDark()).isPresent();
  }

  private static Duration away(ShootingPlan plan, Apsis apsis) {
    Instant at = plan.high().orElseThrow().best().at();
    return Duration.between(at, apsis.at()).abs();
  }

  private static double excess(ShootingPlan plan) {
    return plan.ratio().orElseThrow() - 1;
  }
}

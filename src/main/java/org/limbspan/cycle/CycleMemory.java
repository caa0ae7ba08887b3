package org.limbspan.cycle;

import java.util.List;
import java.util.Optional;
import org.limbspan.sky.Site;

/**
 * What the estimators worked out of one rig's settled past ({@link Milestone}) when they were asked
 * last. Each finds its own again as long as the past is the same reading by reading; otherwise it
 * is worked out anew. It saves time and changes no answer by a bit.
 *
 * <p>Safe for several threads.
 */
public final class CycleMemory {

  /** What a value depends on: readings, and whatever else there is. */
  record Key(List<Observation> past, Site site, Object more) {}

  final Remembered<List<Observation>, Optional<KnownRegression>> slope = new Remembered<>();
  final Remembered<List<Observation>, Optional<KnownRegression>> diameter = new Remembered<>();
  final Remembered<List<Observation>, Optional<KnownRegression>> ratio = new Remembered<>();
  final Remembered<Key, List<NightPair>> pairs = new Remembered<>();
  final Remembered<Key, HypothesisEstimator.Known> hypotheses = new Remembered<>();
  final MonthMemory months = new MonthMemory();
  private final KnownPasses passes = new KnownPasses();
  private final OfAltitudes computed = new OfAltitudes();
  private final OfAltitudes sighted = new OfAltitudes();

  KnownPasses passes() {
    return passes;
  }

  OfAltitudes of(AltitudeSource source) {
    return switch (source) {
      case COMPUTED -> computed;
      case SIGHTED -> sighted;
    };
  }

  /** What depends on the altitudes that are believed. */
  static final class OfAltitudes {
    final Remembered<Key, Optional<LunarFit.Known>> cycle = new Remembered<>();
    final Remembered<SelfReliantEstimator.Turns, SelfReliantEstimator.Extremes> extremes =
        new Remembered<>();
    final Remembered<Key, Optional<NightDistanceEstimator.Known>> distance = new Remembered<>();
  }
}

package org.limbspan.watch;

import org.limbspan.cycle.Observation;

/** Readings with one thing or another put right. */
final class Observations {

  private Observations() {}

  static Observation with(Observation from, int setup, double observedArcmin) {
    return new Observation(
        from.takenAt(),
        from.axis(),
        observedArcmin,
        from.relativeUncertainty(),
        from.sight(),
        setup,
        from.sighted());
  }
}

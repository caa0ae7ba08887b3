package org.limbspan.cycle;

import java.util.List;
import java.util.Optional;

/**
 * Every night pair and what they say together.
 *
 * @param pairs oldest first
 * @param slope observed over predicted logarithmic ratio, all pairs together: 1 where the size
 *     grows towards culmination as predicted, 0 where it does not grow at all
 * @param verdict of the slope
 * @param statedFactor true over stated uncertainty of a reading, from differences within nights
 *     alone; empty with the slope
 */
public record NightRatios(
    List<NightPair> pairs,
    Optional<Estimate> slope,
    Verdict verdict,
    Optional<Double> statedFactor) {

  public NightRatios {
    pairs = List.copyOf(pairs);
  }
}

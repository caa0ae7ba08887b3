package org.limbspan.cycle;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How one hypothesis fares with the readings.
 *
 * @param logLikelihood natural logarithm, at the best of what is free
 * @param logEvidence natural logarithm of the likelihood averaged over what is free
 * @param statedFactor scatter about the hypothesis over stated uncertainty, best value
 * @param monthlyExponent power of the computed monthly change that fits best; empty where the
 *     hypothesis leaves none free (the orbiting Moon has 1)
 * @param heightKm best height of the near Moon; empty for the orbiting one
 */
public record Hypothesis(
    Name name,
    double logLikelihood,
    double logEvidence,
    double statedFactor,
    Optional<Estimate> monthlyExponent,
    OptionalDouble heightKm) {

  /** The two that are compared. */
  public enum Name {
    ORBITING_MOON("orbiting-moon"),
    NEAR_MOON("near-moon");

    private final String label;

    Name(String label) {
      this.label = label;
    }

    /** The word used in answers. */
    public String label() {
      return label;
    }
  }
}

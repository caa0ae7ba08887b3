package org.limbspan.cycle;

/**
 * Two hypotheses beside each other.
 *
 * @param log10BayesFactor positive where the readings are likelier under the orbiting Moon; 0
 *     without readings
 */
public record HypothesisComparison(
    Hypothesis orbitingMoon,
    Hypothesis nearMoon,
    NearMoonAssumptions assumptions,
    double log10BayesFactor,
    int readingCount) {}

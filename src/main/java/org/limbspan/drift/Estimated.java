package org.limbspan.drift;

import java.time.Instant;

/**
 * What all facts say of a change: when it began, with an interval of 95 percent, and how large it
 * is.
 *
 * @param first index of the likeliest first fact after the change
 */
record Estimated(
    int first,
    Instant at,
    Instant from,
    Instant to,
    double sizePercent,
    double uncertaintyPercent,
    Figures figures) {

  static Estimated of(
      Onsets onsets, double sizePercent, double uncertaintyPercent, Figures figures) {
    return new Estimated(
        onsets.first(),
        onsets.at(),
        onsets.from(),
        onsets.to(),
        sizePercent,
        uncertaintyPercent,
        figures);
  }

  /** Of a change whose beginning is known. */
  static Estimated at(
      int first, Instant at, double sizePercent, double uncertaintyPercent, Figures figures) {
    return new Estimated(first, at, at, at, sizePercent, uncertaintyPercent, figures);
  }
}

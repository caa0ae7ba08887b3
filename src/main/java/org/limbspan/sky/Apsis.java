package org.limbspan.sky;

import java.time.Instant;

/**
 * A perigee or an apogee: an extreme of the geocentric distance.
 *
 * @param distanceKm geocentric distance at that instant
 */
public record Apsis(Kind kind, Instant at, double distanceKm) {

  /** Nearest or farthest. */
  public enum Kind {
    PERIGEE,
    APOGEE
  }
}

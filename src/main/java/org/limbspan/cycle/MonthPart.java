package org.limbspan.cycle;

/** What is known of the change of the Moon's distance within one night, some 0.2 percent. */
public enum MonthPart {
  /** Taken off by the curve that the readings of the months draw themselves. */
  READINGS,
  /** Taken off by the shape (not the scale) of the computed distance. */
  COMPUTED
}

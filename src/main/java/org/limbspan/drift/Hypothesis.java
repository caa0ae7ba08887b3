package org.limbspan.drift;

/**
 * What a track supposes: one change more than the track it came from.
 *
 * @param onset index of the first fact after the change
 * @param day day of that fact
 * @param family tracks of one family differ only in their onset
 * @param lens how the readings are to be taken
 */
record Hypothesis(Change change, Cause cause, int onset, double day, String family, Lens lens) {

  private static final String INHERITED = "inherited";

  /** Nothing changed. */
  static Hypothesis none(Lens lens) {
    return new Hypothesis(Change.NONE, Cause.CHANCE, 0, Double.NEGATIVE_INFINITY, "none", lens);
  }

  /** Nothing changed since the setup before. */
  static Hypothesis inherited(Lens lens) {
    return new Hypothesis(Change.NONE, Cause.CHANCE, 0, Double.NEGATIVE_INFINITY, INHERITED, lens);
  }

  boolean isInherited() {
    return family.equals(INHERITED);
  }
}

package org.limbspan.drift;

/**
 * What a track supposes: one change more than the track it came from.
 *
 * @param onset index of the first fact after the change
 * @param family tracks of one family differ only in their onset
 * @param reach how many readings after the onset must have been taken before it counts
 */
record Hypothesis(Change change, int onset, String family, int reach) {

  static final Hypothesis NO_CHANGE = new Hypothesis(Change.NONE, 0, "none", 0);
}

package org.limbspan.cycle;

/**
 * Where a long history is parted into a past that is worked out in full and a rest that is added to
 * what came out: so one more reading costs hardly more after ten years than after one.
 *
 * <p>A history of {@code n} readings has its milestone at the last multiple of a power of two,
 * between a 128th and a 64th part of {@code n}: a number that stays for as many readings. All that
 * belongs to passes before that of the milestone's last reading is the past. Histories of fewer
 * than {@link #LEAST} are never parted. The place depends on the readings alone, not on when they
 * came, so that the answer is the same whoever works it out, and however often before.
 *
 * <p>The rest is added with its own outliers judged; what it changes in the past is taken to second
 * order about what the past alone says ({@link KnownRegression}, {@link KnownLikelihood}). Noise is
 * that of the past.
 */
final class Milestone {

  /** Of fewer readings all are looked at each time. */
  static final int LEAST = 1024;

  private static final int PARTS = 64;

  /** A rest of more than this share is none: all of it lies in one pass. */
  private static final int MOST_REST = 16;

  private Milestone() {}

  /** How many of the readings of {@code series}, the oldest, are the past. */
  static int pastOf(Series series) {
    int size = series.size();
    if (size < LEAST) {
      return size;
    }
    int cut = size - size % (Integer.highestOneBit(size) / PARTS) - 1;
    long pass = series.pass(cut);
    while (cut > 0 && series.pass(cut - 1) == pass) {
      cut--;
    }
    return size - cut > size / MOST_REST ? size : cut;
  }
}

package org.limbspan.drift;

/**
 * A cause and how likely it is.
 *
 * @param probability 0 to 1
 */
public record LikelyCause(Cause cause, double probability) {

  public LikelyCause {
    if (!(probability >= 0 && probability <= 1)) {
      throw new IllegalArgumentException("probability " + probability + ": expected 0 to 1");
    }
  }
}

package org.limbspan.cycle;

/**
 * The scatter of a rig's readings, as the readings themselves show it.
 *
 * @param statedFactor true over stated uncertainty of a reading; 1 where the owner states it well
 * @param nightSd standard deviation of the part common to one night (seeing, haze), relative
 */
public record Noise(double statedFactor, double nightSd) {

  public Noise {
    if (!(statedFactor > 0 && statedFactor < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("statedFactor " + statedFactor + ": expected above 0");
    }
    if (!(nightSd >= 0 && nightSd < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("nightSd " + nightSd + ": expected 0 or more");
    }
  }
}

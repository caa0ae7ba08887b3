package org.limbspan.cycle;

/**
 * How well a setup's plate scale is known.
 *
 * @param setup number of the setup
 * @param relativeUncertainty standard uncertainty over scale, without the part that all
 *     calibrations of the rig have in common; 0 or more
 */
public record SetupScale(int setup, double relativeUncertainty) {

  public SetupScale {
    if (!(relativeUncertainty >= 0 && relativeUncertainty < 1)) {
      throw new IllegalArgumentException(
          "relativeUncertainty " + relativeUncertainty + ": expected 0 or more and below 1");
    }
  }
}

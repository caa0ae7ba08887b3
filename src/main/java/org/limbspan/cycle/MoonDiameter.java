package org.limbspan.cycle;

import java.util.List;

/**
 * The Moon's true diameter by the law that apparent size times distance is constant.
 *
 * @param diameterKm over all setups, km; common part of the calibrations included
 * @param setups the same for each setup alone, its own scale's uncertainty included, the common
 *     part not
 * @param readingCount readings that went in
 */
public record MoonDiameter(Estimate diameterKm, List<OfSetup> setups, int readingCount) {

  /** From one setup. */
  public record OfSetup(int setup, Estimate diameterKm) {}

  public MoonDiameter {
    setups = List.copyOf(setups);
  }
}
